import type { GraphNode } from '../graph/job.ts';
import type { PrintInput } from '../ink/model-input.ts';
import { inkSet, printingOf } from './ink-set.ts';
import { paperStock } from './paper-stock.ts';

/** What the colours of a job depend on. */
export interface Print {
  /** Ids of the plates, in print order; one for each ink of the input. */
  plates: readonly string[];
  input: PrintInput;
}

/** The print that a job's first Ink set and Paper stock make; null when they make none. */
export function printOf(nodes: readonly GraphNode[]): Print | null {
  const settingsOf = (kind: string) => nodes.find((node) => node.kind === kind)?.settings;
  const set = inkSet.settings.safeParse(settingsOf(inkSet.kind));
  if (!set.success) return null;
  const { lab, surface } = paperStock.settings.parse(settingsOf(paperStock.kind) ?? {});
  const { inks, plates } = set.data;
  const known = plates.flatMap((plate) => {
    const ink = inks.find(({ id }) => id === plate.ink);
    return ink ? [{ ...plate, ink }] : [];
  });
  if (known.length === 0) return null;
  const input = {
    paper: { lab, surface },
    inks: known.map(({ ink }) => ink),
    passes: known.map(({ pass }) => pass),
    ...printingOf(set.data),
  };
  return { plates: known.map(({ id }) => id), input };
}
