import { z } from 'zod';
import { idSchema } from '../graph/inks.ts';
import { defineNode, type Preset } from '../graph/node-kind.ts';

/** What a stroke does to the ink it passes. */
export const MARK_DOES = ['lift', 'lift-to', 'lay', 'set'] as const;
/** How its edge stands. */
export const MARK_EDGES = ['clean', 'dry', 'stipple'] as const;

/** mm from the top left corner, and how far the hand pressed, 0..1. */
const handPoint = z.tuple([
  z.number().min(-5000).max(5000),
  z.number().min(-5000).max(5000),
  z.number().min(0).max(1),
]);

export const handMarkSchema = z.strictObject({
  id: idSchema,
  does: z.enum(MARK_DOES),
  /** Ids of the plates it touches; all of them when empty. */
  plates: z.array(idSchema).max(12),
  /** How much a lift takes away, or what tint is reached or laid. */
  tintPercent: z.number().min(0).max(100),
  /** Width where the hand presses fully. */
  widthMm: z.number().min(0.05).max(100),
  edge: z.enum(MARK_EDGES),
  points: z.array(handPoint).min(1).max(5000),
});

/** A stroke hardly pressed is still so wide, as a share of its width. */
const LIGHTEST = 0.12;

/** Share of its full width that a stroke has where the hand presses so far, both 0..1. */
export function shareOfWidth(pressure: number): number {
  return LIGHTEST + (1 - LIGHTEST) * pressure;
}

/** Most points of all marks together. */
const MOST_POINTS = 500_000;

/** What a stroke is drawn with; the rest comes from the hand. */
const brushSchema = z.strictObject({
  does: handMarkSchema.shape.does.default('lift'),
  tintPercent: handMarkSchema.shape.tintPercent.default(100),
  widthMm: handMarkSchema.shape.widthMm.default(1.5),
  edge: handMarkSchema.shape.edge.default('clean'),
});

/** The figures are ours, chosen by eye on our own specimens. */
const brushes: readonly Preset[] = [
  {
    name: 'Dibber',
    help: 'Round and full: lays solid ink',
    settings: { does: 'lay', tintPercent: 100, widthMm: 2.5, edge: 'clean' },
  },
  {
    name: 'Hoe',
    help: 'Scrapes ink away cleanly',
    settings: { does: 'lift', tintPercent: 100, widthMm: 1.8, edge: 'clean' },
  },
  {
    name: 'Besom',
    help: 'Broad dry sweep of half a tint',
    settings: { does: 'lay', tintPercent: 55, widthMm: 9, edge: 'dry' },
  },
  {
    name: 'Riddle',
    help: 'Strews dots of ink',
    settings: { does: 'lay', tintPercent: 85, widthMm: 6, edge: 'stipple' },
  },
  {
    name: 'Trowel',
    help: 'Smooths down to a pale tint',
    settings: { does: 'lift-to', tintPercent: 35, widthMm: 4, edge: 'clean' },
  },
  {
    name: 'Thorn',
    help: 'Scratches a fine highlight',
    settings: { does: 'lift', tintPercent: 100, widthMm: 0.4, edge: 'clean' },
  },
  {
    name: 'Wire rake',
    help: 'Lifts ink in dry streaks',
    settings: { does: 'lift', tintPercent: 70, widthMm: 5, edge: 'dry' },
  },
];

export const handMarks = defineNode({
  kind: 'hand-marks',
  version: 1,
  title: 'Hand marks',
  help: 'Strokes lifted from plates or laid on them by hand: highlights, shading, corrections.',
  role: 'artwork',
  runs: 'surface',
  inputs: { plates: { type: 'plates' }, area: { type: 'area', optional: true } },
  outputs: { plates: { type: 'plates' } },
  settings: z.strictObject({
    marks: z
      .array(handMarkSchema)
      .max(20_000)
      .refine(
        (marks) => marks.reduce((sum, { points }) => sum + points.length, 0) <= MOST_POINTS,
        `all marks together may have ${MOST_POINTS} points; take some out`,
      )
      .default([])
      .meta({ title: 'Marks', help: 'Strokes drawn on the print, the first drawn first.' }),
  }),
  presets: { shape: brushSchema, list: brushes },
});

export type HandMark = z.infer<typeof handMarkSchema>;
