import { z } from 'zod';
import { defineNode, type Preset } from '../graph/node-kind.ts';
import { choice, measure, seed, sheetNumber } from './settings.ts';

const shift = z.strictObject({
  alongMm: z.number().min(-20).max(20).default(0),
  acrossMm: z.number().min(-20).max(20).default(0),
  rotationDeg: z.number().min(-5).max(5).default(0).meta({ step: 0.01 }),
  /** Growth over the whole length of the feed. */
  stretchMm: z.number().min(-10).max(10).default(0),
});

const settings = z.strictObject({
  feedEdge: choice(['top', 'right', 'bottom', 'left'], 'top', {
    title: 'Feed edge',
    help: 'The edge that enters the press first, laid against the lays; stretch grows away from it.',
  }),
  how: choice(['fixed', 'by-chance', 'both'], 'fixed', {
    title: 'Offsets',
    help: 'As set for each plate, drawn by chance within the tolerance, or as set with chance on top.',
  }),
  offsets: z.record(z.string().max(64), shift).default({}).meta({
    title: 'Offset of each plate',
    help: 'Along and across the feed in mm, rotation in degrees, stretch in mm over the feed length.',
  }),
  /** Jobs from before this setting turned plates about the middle, and go on doing so. */
  turnsAbout: choice(['middle', 'lay-edge'], 'middle', {
    title: 'Plates turn about',
    help: 'The middle of the sheet, or the middle of its feed edge, where it lies against the lays.',
  }),
  toleranceAlongMm: measure('mm', 0, 5, 0.5, {
    title: 'Tolerance along the feed',
    help: 'Largest shift by chance.',
  }),
  toleranceAcrossMm: measure('mm', 0, 5, 0.25, {
    title: 'Tolerance across the feed',
    help: 'Largest shift by chance.',
  }),
  toleranceDeg: measure('deg', 0, 2, 0.05, {
    title: 'Tolerance of rotation',
    help: 'Largest turn by chance.',
  }),
  sheet: sheetNumber(),
  seed: seed(1),
});

/** The figures are ours, chosen by eye on our own specimens. */
const list: readonly Preset[] = [
  {
    name: 'Still air',
    help: 'Hardly off',
    settings: { how: 'both', toleranceAlongMm: 0.1, toleranceAcrossMm: 0.1, toleranceDeg: 0.01 },
  },
  {
    name: 'Breeze',
    help: 'A little off, as by a careful hand',
    settings: { how: 'both', toleranceAlongMm: 0.35, toleranceAcrossMm: 0.25, toleranceDeg: 0.04 },
  },
  {
    name: 'Gust',
    help: 'Plainly off, more along the feed',
    settings: { how: 'both', toleranceAlongMm: 1, toleranceAcrossMm: 0.5, toleranceDeg: 0.12 },
  },
  {
    name: 'Gale',
    help: 'Far off',
    settings: { how: 'both', toleranceAlongMm: 2.5, toleranceAcrossMm: 1.5, toleranceDeg: 0.35 },
  },
];

export const registerOffset = defineNode({
  kind: 'register-offset',
  version: 2,
  title: 'Register offset',
  help: 'Shifts, turns and stretches plates against one another, as a press does.',
  role: 'simulation',
  runs: 'surface',
  inputs: { plates: { type: 'plates' } },
  outputs: { plates: { type: 'plates' } },
  settings,
  presets: {
    shape: settings.pick({ how: true, toleranceAlongMm: true, toleranceAcrossMm: true, toleranceDeg: true }),
    list,
  },
});

type FeedEdge = 'top' | 'right' | 'bottom' | 'left';

/** Unit vector from the feed edge into the sheet; across lies a quarter turn to its side, to the right or down. */
export const ALONG_FEED: Readonly<Record<FeedEdge, readonly [number, number]>> = {
  top: [0, 1],
  bottom: [0, -1],
  left: [1, 0],
  right: [-1, 0],
};

/** A move over the sheet, mm to the right and down, as register names it: along and across the feed. */
export function inFeedTerms(
  [right, down]: readonly [number, number],
  feedEdge: FeedEdge,
): { alongMm: number; acrossMm: number } {
  const [ax, ay] = ALONG_FEED[feedEdge];
  return { alongMm: right * ax + down * ay, acrossMm: right * Math.abs(ay) + down * Math.abs(ax) };
}

/**
 * How far the far edge of a sheet swings across the feed when a plate turns about the lay edge, mm.
 *
 * @param rotationDeg clockwise is positive
 * @param feedMm length of the sheet along the feed
 */
export function farEdgeMm(rotationDeg: number, feedMm: number): number {
  return feedMm * Math.sin((rotationDeg * Math.PI) / 180);
}
