import { createStore } from 'zustand/vanilla';
import type { Show } from '../../workers/client.ts';
import type { Recipe } from '../graph/recipe.ts';

/** What the print view shows. */
export type Showing = Show;

/** What the person sees and holds: no part of the document, not undone. */
export interface ViewState {
  showing: Showing;
  /** The recipe that a click gives to a region. */
  inHand: Recipe | null;
  /** Id of the node whose settings the docket shows. */
  node: string | null;
  /** Id of the region under the pointer. */
  hovered: string | null;
  /** Whether the wiring is unfolded. */
  wiringOpen: boolean;
  /** Whether a finger or pointer moves something just now: previews stay coarse until it rests. */
  handMoves: boolean;
  /** Whether the print is so large on screen that the fine picture is not fine enough. */
  closeUp: boolean;
}

export const viewStore = createStore<ViewState>(() => ({
  showing: { view: 'proof' },
  inHand: null,
  node: null,
  hovered: null,
  wiringOpen: false,
  handMoves: false,
  closeUp: false,
}));

export function setView(change: Partial<ViewState>): void {
  viewStore.setState(change);
}
