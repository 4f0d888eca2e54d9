import type { Tool, ToolSet } from '../../app/registry.ts';
import { useView } from '../../store/hooks.ts';
import { areaTools } from './area-tools.ts';
import { chooseToolOf } from './choose-thing.ts';
import { fadeTools } from './fade-tools.ts';
import { markTools } from './mark-tools.ts';
import { nudgeTool } from './nudge-tool.ts';
import { surfaceTexts as texts } from './strings.ts';
import type { SurfaceSet } from './things.ts';

/** The tools by what they work at; each set begins with the one to begin with. */
const toolsBySet: Readonly<Record<SurfaceSet, readonly [Tool, ...Tool[]]>> = {
  areas: [...areaTools, chooseToolOf('areas', texts.tools.chooseShape)],
  marks: [...markTools, chooseToolOf('marks', texts.tools.chooseMark)],
  fades: [...fadeTools, chooseToolOf('fades', texts.tools.chooseFade)],
  nudge: [nudgeTool],
};

export const surfaceSets = Object.keys(toolsBySet) as SurfaceSet[];

export const surfaceTools: readonly Tool[] = Object.values(toolsBySet).flat();

export function toolsOf(set: SurfaceSet): readonly [Tool, ...Tool[]] {
  return toolsBySet[set];
}

function isSurface(set: ToolSet | undefined): set is SurfaceSet {
  return set !== undefined && set !== 'usual' && set !== 'regions';
}

/** The set that a tool belongs to; null for the tools for recipes and regions. */
export function surfaceSetOf(tool: string): SurfaceSet | null {
  const set = surfaceTools.find(({ id }) => id === tool)?.set;
  return isSurface(set) ? set : null;
}

/** What is worked at over the regions; null when nothing is. */
export function useSurfaceSet(): SurfaceSet | null {
  return useView(({ tool }) => surfaceSetOf(tool));
}
