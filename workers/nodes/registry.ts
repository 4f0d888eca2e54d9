import type { Evaluations } from '../engine/evaluation.ts';
import { area } from './area.ts';
import { cleanLine } from './clean-line.ts';
import { closedRegions } from './closed-regions.ts';
import { fillPlates } from './fill-plates.ts';
import { halftone } from './halftone.ts';
import { handMarks } from './hand-marks.ts';
import { inkSet } from './ink-set.ts';
import { keyLine } from './key-line.ts';
import { lineDrawing } from './line-drawing.ts';
import { matchRough } from './match-rough.ts';
import { paperStock } from './paper-stock.ts';
import { plateArt } from './plate-art.ts';
import { plateGrain } from './plate-grain.ts';
import { pressFaults } from './press-faults.ts';
import { pressFile } from './press-file.ts';
import { pressSheet } from './press-sheet.ts';
import { proof } from './proof.ts';
import { regionTints } from './region-tints.ts';
import { registerOffset } from './register-offset.ts';
import { trap } from './trap.ts';

/** The pixel side of every node kind, by kind. */
export const evaluations: Evaluations = new Map(
  [
    lineDrawing,
    cleanLine,
    closedRegions,
    area,
    inkSet,
    matchRough,
    regionTints,
    fillPlates,
    plateArt,
    trap,
    handMarks,
    keyLine,
    plateGrain,
    halftone,
    registerOffset,
    pressFaults,
    paperStock,
    proof,
    pressSheet,
    pressFile,
  ].map((evaluation) => [evaluation.kind, evaluation]),
);
