import { expose } from 'comlink';

/** Makes an api callable from whoever started this worker. */
export function exposeHere(api: object): void {
  expose(api);
}

/** How many workers to start when nobody says: every core but one, which the page keeps. */
export function usualWorkers(): number {
  return Math.max(1, navigator.hardwareConcurrency - 1);
}

/** A page cannot tell what memory it holds. */
export function processPeakBytes(): number | null {
  return null;
}
