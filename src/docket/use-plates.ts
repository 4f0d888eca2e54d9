import { useMemo } from 'react';
import type { Ink } from '../graph/inks.ts';
import { useJob } from '../store/hooks.ts';
import { inkSetFor, readInkSet } from './ink-edits.ts';

/** A plate with the ink it prints in. */
export interface PlateRow {
  id: string;
  /** The ink's name; with the plate's id where several plates print in that ink. */
  name: string;
  order: number;
  pass: number;
  ink: Ink;
}

/** The plates that reach a node, in print order; none while the Ink set cannot be read. */
export function usePlates(node: string): readonly PlateRow[] {
  const set = useJob((job) => inkSetFor(job.graph, node));
  return useMemo(() => platesOf(set), [set]);
}

/** The plates of an Ink set node, in print order; a plate whose ink is missing is left out. */
export function platesOf(set: Parameters<typeof readInkSet>[0]): PlateRow[] {
  const read = readInkSet(set);
  if (!read) return [];
  return read.plates.flatMap(({ id, pass, ink: name }, i) => {
    const ink = read.inks.find((each) => each.id === name);
    if (!ink) return [];
    const alone = read.plates.filter((plate) => plate.ink === name).length === 1;
    return [{ id, name: alone ? ink.name : `${ink.name} (${id})`, pass, order: i + 1, ink }];
  });
}
