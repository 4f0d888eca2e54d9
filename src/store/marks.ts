/** What the browser's timeline is told of, for whoever measures. */
export type Mark = 'keyblock step' | 'keyblock painted';

/** Leaves a mark in the browser's timeline; only the newest of a name stays. */
export function mark(name: Mark, detail: string | number): void {
  performance.clearMarks(name);
  performance.mark(name, { detail });
}
