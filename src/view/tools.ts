import type { Shortcut, Tool } from '../app/registry.ts';
import { setView, USUAL_TOOL, viewStore } from '../store/view-store.ts';
import type { Point } from './camera.ts';
import { beginStroke, pickUp, regionUnder, tint } from './hand.ts';
import { say } from './said-store.ts';
import { strings } from './strings.ts';

/** What a hand over the print can do, as the print's foot offers it. */
export const tools: readonly [Tool, ...Tool[]] = [
  { id: USUAL_TOOL, ...strings.tools.tint, key: 't', tap: tint, stroke: beginStroke },
  { id: 'pick-up', ...strings.tools.pickUp, key: 'p', tap: pickUp, stroke: () => null },
];

export function takeTool({ id, help }: Tool): void {
  setView({ tool: id });
  say(help);
}

/** The tool that is taken. */
export function toolTaken(): Tool {
  const { tool } = viewStore.getState();
  return tools.find(({ id }) => id === tool) ?? tools[0];
}

/** A click or touch on the print: what the tool does, or a pick-up where that was asked or nothing is in hand. */
export function tapAt(at: Point, picksUp: boolean): void {
  const region = regionUnder(at);
  if (region === null) return;
  if (picksUp || !viewStore.getState().inHand) pickUp(region);
  else toolTaken().tap(region);
}

export const toolShortcuts: readonly Shortcut[] = tools.map((tool) => ({
  keys: tool.key,
  name: tool.title,
  run: () => takeTool(tool),
}));
