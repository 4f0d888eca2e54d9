import { createStore } from 'zustand/vanilla';
import type { Show } from '../../workers/client.ts';
import type { Recipe } from '../graph/recipe.ts';
import type { Eyes } from '../ink/seen-as.ts';

/** What the print view shows. */
export type Showing = Show;

/** Sheets that can lie over the print: recipes, inks, colourways proposed and compared, the edition. */
export type SheetName = 'chart' | 'inks' | 'proposals' | 'compare' | 'edition';

/** What the person sees and holds: no part of the document, not undone. */
export interface ViewState {
  showing: Showing;
  /** Id of the tool that a click or drag over the print works with. */
  tool: string;
  /** The recipe that a click gives to a region. */
  inHand: Recipe | null;
  /** Id of the node whose settings the docket shows. */
  node: string | null;
  /** Id of the region under the pointer. */
  hovered: string | null;
  /** Ids of the regions that were chosen, in that order. */
  chosen: readonly string[];
  /** Whether the wiring is unfolded. */
  wiringOpen: boolean;
  /** The sheet that lies over the print. */
  sheet: SheetName | null;
  /** Whether the lines before a redraw lie over the print. */
  ghost: boolean;
  /** Whose eyes the print is shown to. */
  eyes: Eyes;
  /** Whether a finger or pointer moves something just now: previews stay coarse until it rests. */
  handMoves: boolean;
  /** Whether the print is so large on screen that the fine picture is not fine enough. */
  closeUp: boolean;
}

/** The tool to begin with, and whenever a recipe is taken in hand. */
export const USUAL_TOOL = 'tint';

export const viewStore = createStore<ViewState>(() => ({
  showing: { view: 'proof' },
  tool: USUAL_TOOL,
  inHand: null,
  node: null,
  hovered: null,
  chosen: [],
  wiringOpen: false,
  sheet: null,
  ghost: false,
  eyes: 'usual',
  handMoves: false,
  closeUp: false,
}));

export function setView(change: Partial<ViewState>): void {
  viewStore.setState(change.inHand ? { tool: USUAL_TOOL, ...change } : change);
}
