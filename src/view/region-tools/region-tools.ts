import type { Tool } from '../../app/registry.ts';
import { useView } from '../../store/hooks.ts';
import { type ViewState, viewStore } from '../../store/view-store.ts';
import { chooseTool } from './choose-tool.ts';
import { join } from './join-tool.ts';
import { cut, drawWall } from './path-tools.ts';
import { ignoreMark, openWall } from './place-tools.ts';

/** The tools that choose and mend regions. */
export const regionTools: readonly [Tool, ...Tool[]] = [
  chooseTool,
  openWall,
  drawWall,
  cut,
  join,
  ignoreMark,
];

/** Whether the regions themselves are worked at: their view is on, or one of their tools is taken. */
function atRegions({ showing, tool }: ViewState): boolean {
  return showing.view === 'regions' || regionTools.some(({ id }) => id === tool);
}

/** Whether the tools and marks of the regions show. */
export function regionsShow(): boolean {
  return atRegions(viewStore.getState());
}

export function useRegionsShow(): boolean {
  return useView(atRegions);
}
