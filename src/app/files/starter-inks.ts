import type { GraphNode } from '../../graph/job.ts';

/** The inks that a new job starts with: those of the example. */
export const STARTER_INKS: GraphNode['settings'] = {
  inks: [
    { id: 'pantile', name: 'Pantile', lab: [66, 40, 49], opacity: 0.005 },
    { id: 'water-butt', name: 'Water butt', lab: [45, -25, -7], opacity: 0.005 },
    { id: 'damson', name: 'Damson', lab: [31, 30, -17], opacity: 0.005 },
  ],
  plates: [
    { id: 'pantile', ink: 'pantile', pass: 1 },
    { id: 'water-butt', ink: 'water-butt', pass: 2 },
    { id: 'damson', ink: 'damson', pass: 3 },
  ],
};
