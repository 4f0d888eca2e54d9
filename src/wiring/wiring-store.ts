import { createStore } from 'zustand/vanilla';
import type { End, Wire } from '../graph/job.ts';

/** What the hand is doing in the wiring: no part of the document. */
export interface WiringState {
  /** The output chosen first, while its input is being chosen. */
  from: End | null;
  /** The chosen wire. */
  wire: Wire | null;
  /** Which list of kinds is open. */
  list: 'add' | 'insert' | null;
  /** Why the last thing asked for cannot be, as a sentence. */
  refused: string | null;
}

const AT_REST: WiringState = { from: null, wire: null, list: null, refused: null };

export const wiringStore = createStore<WiringState>(() => AT_REST);

/** Changes what the hand does; an earlier refusal is forgotten unless a new one comes. */
export function setWiring(change: Partial<WiringState>): void {
  wiringStore.setState({ refused: null, ...change });
}

/** Lets go of everything. */
export function restWiring(): void {
  wiringStore.setState(AT_REST);
}
