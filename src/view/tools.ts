import type { Shortcut, Tool } from '../app/registry.ts';
import { setView, USUAL_TOOL, viewStore } from '../store/view-store.ts';
import type { Point } from './camera.ts';
import { beginStroke, pickUp, spotAt, tint } from './hand.ts';
import { regionTools } from './region-tools/region-tools.ts';
import { dropUnfinished } from './region-tools/unfinished-store.ts';
import { say } from './said-store.ts';
import { strings } from './strings.ts';
import { surfaceStore } from './surface-tools/surface-store.ts';
import { surfaceTools } from './surface-tools/surface-tools.ts';

/** A tool that acts on whole regions. */
const onRegion =
  (act: (region: string) => void): Tool['tap'] =>
  ({ region }) => {
    if (region !== null) act(region);
  };

const usual = { set: 'usual', walks: 'regions' } as const;

/** What a hand over the print can do, whatever shows. */
export const usualTools: readonly [Tool, ...Tool[]] = [
  { id: USUAL_TOOL, ...strings.tools.tint, key: 't', ...usual, tap: onRegion(tint), stroke: beginStroke },
  {
    id: 'pick-up',
    ...strings.tools.pickUp,
    key: 'p',
    ...usual,
    tap: onRegion(pickUp),
    stroke: () => null,
  },
];

const tools: readonly Tool[] = [...usualTools, ...regionTools, ...surfaceTools];

export function takeTool({ id, help, set, taken }: Tool): void {
  dropUnfinished();
  if (toolTaken().set !== set) surfaceStore.setState({ chosen: null });
  setView({ tool: id });
  taken?.();
  say(help);
}

/** Puts a tool for regions down. */
export function takeUsualTool(): void {
  takeTool(usualTools[0]);
}

/** The tool that is taken. */
export function toolTaken(): Tool {
  const { tool } = viewStore.getState();
  return tools.find(({ id }) => id === tool) ?? usualTools[0];
}

/** A click or touch on the print: what the tool does, or a pick-up where that was asked or nothing is in hand. */
export function tapAt(at: Point, picksUp: boolean): void {
  const spot = spotAt(at);
  const tool = toolTaken();
  if (picksUp || (tool.set === 'usual' && !viewStore.getState().inHand)) onRegion(pickUp)(spot);
  else tool.tap(spot);
}

/** A finger rested on the print. @returns whether that picked a recipe up */
export function holdAt(at: Point): boolean {
  const { region } = spotAt(at);
  if (toolTaken().set !== 'usual' || region === null) return false;
  pickUp(region);
  return true;
}

/** One shortcut a key: of tools that share it, the one of the set that is worked at, else the first. */
export const toolShortcuts: readonly Shortcut[] = [...new Set(tools.map(({ key }) => key))].map((key) => {
  const sharing = tools.filter((tool) => tool.key === key);
  return {
    keys: key,
    name: sharing[0]!.title,
    run: () => takeTool(sharing.find(({ set }) => set === toolTaken().set) ?? sharing[0]!),
  };
});
