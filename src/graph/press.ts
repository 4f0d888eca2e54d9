import { z } from 'zod';

/** Where a figure comes from, the most telling first. */
export const FIGURE_SOURCES = ['own-test', 'printer', 'published', 'common-practice'] as const;

export type FigureSource = (typeof FIGURE_SOURCES)[number];

export const figureSchema = z.strictObject({ value: z.number(), source: z.enum(FIGURE_SOURCES) });

/** Figures of a press by name; the unit ends the name. */
export const PRESS_FIGURES = [
  'toleranceAlongMm',
  'toleranceAcrossMm',
  'stretchMostMm',
  'trapMm',
  'leastPositiveMm',
  'leastReverseMm',
  'leastTintPercent',
  'mostTintPercent',
  'mostSolidPercent',
  'largeSolidCm2',
  'mostInkPercent',
  'marginMm',
  'leadEdgeMm',
  'centreStripMm',
  'bleedMm',
  'rulingLpi',
  'dotMm',
  'meshPerCm',
] as const;

export type PressFigure = (typeof PRESS_FIGURES)[number];

/** How ink gets onto the sheet. */
export const PROCESSES = ['stencil', 'hand-screen', 'automatic-screen', 'relief', 'offset', 'own'] as const;

export type Process = (typeof PROCESSES)[number];

/** What a press holds, as far as it is known. */
export const pressSchema = z.strictObject({
  name: z.string().min(1).max(80),
  process: z.enum(PROCESSES).default('own'),
  figures: z.partialRecord(z.enum(PRESS_FIGURES), figureSchema).default({}),
});

export type Press = z.infer<typeof pressSchema>;
