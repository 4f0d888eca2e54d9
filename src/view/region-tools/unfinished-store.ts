import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Point } from '../camera.ts';

/** Places that a tool was given and has not made anything of yet. */
export interface Unfinished {
  /** Id of the tool. */
  tool: string;
  /** mm on the sheet. */
  points: readonly Point[];
  /** Makes of them what the tool makes; null for a tool that ends by itself. */
  finish: ((points: readonly Point[]) => void) | null;
  /** How the places and the hand are joined where they are no plain path. */
  outline?: 'ring' | 'rectangle' | 'circle';
  /** Fewer places than these come to nothing; 2 where it is not said. */
  least?: number;
}

const store = createStore<{ now: Unfinished | null }>(() => ({ now: null }));

export function useUnfinished(): Unfinished | null {
  return useStore(store, ({ now }) => now);
}

/** What a tool was begun with; null when it was not. */
export function unfinishedOf(tool: string): Unfinished | null {
  const { now } = store.getState();
  return now?.tool === tool ? now : null;
}

export function keepUnfinished(now: Unfinished): void {
  store.setState({ now });
}

/** Lets the places go. @returns whether there were any */
export function dropUnfinished(): boolean {
  const { now } = store.getState();
  if (now) store.setState({ now: null });
  return now !== null;
}

/** Makes something of the places, where the tool can. */
export function finishUnfinished(): void {
  const { now } = store.getState();
  if (!now?.finish) return;
  store.setState({ now: null });
  now.finish(now.points);
}

/** Takes the last place back. @returns whether there was one */
export function takeBackPoint(): boolean {
  const { now } = store.getState();
  if (!now) return false;
  const points = now.points.slice(0, -1);
  store.setState({ now: points.length > 0 ? { ...now, points } : null });
  return true;
}
