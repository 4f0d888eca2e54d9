import type { GraphNode } from '../../graph/job.ts';
import { DEMO_INKS } from '../../ink/demo-inks.ts';

const IDS = ['pantile', 'water-butt', 'damson'];

/** The inks that a new job starts with: those of the example, of the generic inks. */
export const STARTER_INKS: GraphNode['settings'] = {
  inks: IDS.map((id) => ({ ...DEMO_INKS.find((ink) => ink.id === id)! })),
  plates: IDS.map((id, i) => ({ id, ink: id, pass: i + 1 })),
};
