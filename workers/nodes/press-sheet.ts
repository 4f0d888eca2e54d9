import { pressSheet as kind } from '../../src/nodes/press-sheet.ts';
import { evaluation } from '../engine/evaluation.ts';

/** The sheet is laid out when files are made: only then are the plates there. */
export const pressSheet = evaluation(kind, async ({ settings }) => ({ sheet: { type: 'sheet', settings } }));
