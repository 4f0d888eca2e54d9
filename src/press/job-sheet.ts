import type { Complaint } from '../graph/complaint.ts';

/** What stands on the sheet that goes with a job to the press. */
export interface JobSheet {
  title: string;
  colourway: string;
  /** ISO 8601 in UTC. */
  madeAt: string;
  press: string | null;
  /** What the process calls a plate. */
  plateWord: string;
  trimMm: readonly [number, number];
  sheetMm: readonly [number, number];
  bleedMm: number;
  feedEdge: string;
  side: string;
  marks: readonly string[];
  /** How film is turned; null where it is as it reads. */
  film: string | null;
  stock: string;
  plates: readonly JobSheetPlate[];
  faults: readonly Complaint[];
}

export interface JobSheetPlate {
  order: number;
  id: string;
  ink: string;
  pass: number;
  coveragePercent: number;
  /** How its tints grow, and whether that was taken back. */
  tone: string;
  /** A small grey PNG. */
  thumbnail: Uint8Array;
}

/** What to mind where plates are exposed and printed. */
export const CAUTIONS: readonly string[] = [
  'Exposure lamps give off ultraviolet light: keep them covered, do not look into them.',
  'Emulsions, removers, inks and solvents can harm skin, eyes and lungs: gloves, goggles, fresh air. Follow their data sheets and the rules of your place; keep solvents from flames and out of the drain.',
  'Cutting and pressing machines: hands off while they run, guards on.',
  'Printed matter is not for contact with food unless ink and stock are made for it.',
];
