import { z } from 'zod';
import { labSchema, surfaceSchema } from '../graph/inks.ts';
import { hashSchema } from '../graph/job.ts';
import { defineNode, type Preset } from '../graph/node-kind.ts';
import { choice, measure, seed } from './settings.ts';

const settings = z.strictObject({
  lab: labSchema.default([95, 0.5, -2]).meta({ title: 'Colour', help: 'CIE Lab D50 of the bare sheet.' }),
  surface: surfaceSchema.default('uncoated').meta({
    title: 'Surface',
    help: 'How the sheet takes ink: tints gain more on open paper.',
  }),
  toothPercent: measure('%', 0, 100, 30, { title: 'Tooth', help: 'Unevenness of the surface.' }),
  toothMm: measure('mm', 0.05, 5, 0.25, { title: 'Size of the tooth', help: 'Width of its bumps.' }),
  inkOnToothPercent: measure('%', 0, 100, 0, {
    title: 'Ink on the tooth',
    help: 'How much ink thins where the sheet stands up.',
  }),
  fibresPercent: measure('%', 0, 100, 25, {
    title: 'Fibres',
    help: 'How much of the fibres in the sheet shows.',
  }),
  fibresDeg: measure('deg', -90, 90, 0, {
    title: 'Direction of fibres',
    help: 'Clockwise from the line across the sheet.',
  }),
  fibresSpreadDeg: measure('deg', 0, 90, 90, {
    title: 'Spread of fibres',
    help: 'How far a fibre may lie off that direction; at 90 they lie in all directions.',
  }),
  flecksPercent: measure('%', 0, 100, 50, { title: 'Flecks', help: 'How dark the flecks are.' }),
  flecksPerDm2: z.number().min(0).max(5000).default(0).meta({
    title: 'Flecks to 1 dm2',
    help: 'How many flecks there are in a square of 10 cm.',
  }),
  flecksMm: measure('mm', 0.05, 10, 0.6, { title: 'Size of flecks', help: 'Length of the longest.' }),
  mould: choice(['wove', 'laid'], 'wove', {
    title: 'Mould',
    help: 'Laid paper shows the wires of its mould as fine lines against the light.',
  }),
  laidMm: measure('mm', 0.3, 10, 1.1, { title: 'Laid lines', help: 'From one line to the next.' }),
  laidPercent: measure('%', 0, 100, 40, { title: 'Strength of laid lines', help: 'How much they show.' }),
  deckleMm: measure('mm', 0, 30, 0, {
    title: 'Deckle edge',
    help: 'How far the torn edge of the sheet runs in and out; 0 is a cut edge.',
  }),
  asset: hashSchema.nullable().default(null).meta({
    title: 'Scanned sheet',
    help: 'A scan of bare paper, instead of tooth, fibres, flecks and lines. Its light is evened and it is laid out without a seam; its colour is the one above.',
  }),
  scanPpi: measure('ppi', 20, 4800, 300, { title: 'Scanned at', help: 'Pixels per inch of the scan.' }),
  scanPercent: measure('%', 0, 400, 100, {
    title: 'Strength of the scan',
    help: 'How much of its unevenness shows: at 100 as it was scanned.',
  }),
  showThroughPercent: measure('%', 0, 100, 0, {
    title: 'Show-through',
    help: 'How strongly the back of the sheet is seen, mirrored; at 100 as strongly as its front.',
  }),
  backAsset: hashSchema.nullable().default(null).meta({
    title: 'Back of the sheet',
    help: 'A picture of what is printed there, as wide as the sheet; without one, this same print.',
  }),
  seed: seed(1),
});

/** The figures are ours, chosen by eye on our own specimens. */
const list: readonly Preset[] = [
  {
    name: 'Chalk',
    help: 'White and smooth, takes ink crisply',
    settings: { lab: [96, 0, -1], surface: 'coated', toothPercent: 8, toothMm: 0.15, fibresPercent: 5 },
  },
  {
    name: 'Silt',
    help: 'Thin grey sheet with a soft tooth',
    settings: {
      lab: [83, 0.5, 5],
      surface: 'newsprint',
      toothPercent: 45,
      toothMm: 0.3,
      fibresPercent: 45,
      inkOnToothPercent: 25,
    },
  },
  {
    name: 'Loess',
    help: 'Warm cream, laid, with a torn edge',
    settings: {
      lab: [91, 1.5, 12],
      toothPercent: 35,
      fibresPercent: 30,
      mould: 'laid',
      laidPercent: 55,
      inkOnToothPercent: 20,
      deckleMm: 1.5,
    },
  },
  {
    name: 'Peat',
    help: 'Brown, long fibres and dark flecks',
    settings: {
      lab: [71, 6, 18],
      toothPercent: 55,
      toothMm: 0.4,
      fibresPercent: 80,
      flecksPerDm2: 160,
      flecksPercent: 60,
      flecksMm: 1.4,
      inkOnToothPercent: 35,
    },
  },
  {
    name: 'Compost',
    help: 'Off-white, strewn with flecks of all kinds',
    settings: {
      lab: [89, 0.5, 7],
      toothPercent: 40,
      fibresPercent: 55,
      flecksPerDm2: 420,
      flecksPercent: 75,
      flecksMm: 1.1,
      inkOnToothPercent: 20,
    },
  },
  {
    name: 'Old snow',
    help: 'Cool white with a coarse tooth that ink skips',
    settings: {
      lab: [94, -0.5, -3],
      toothPercent: 70,
      toothMm: 0.7,
      fibresPercent: 20,
      inkOnToothPercent: 60,
    },
  },
];

export const paperStock = defineNode({
  kind: 'paper-stock',
  version: 3,
  title: 'Paper stock',
  help: 'The sheet the proof lies on: colour, surface, tooth, fibres, flecks and edge. It never enters the plates.',
  role: 'simulation',
  runs: 'surface',
  inputs: {},
  outputs: { paper: { type: 'paper' } },
  settings,
  presets: {
    shape: settings.omit({ asset: true, backAsset: true, scanPpi: true, scanPercent: true, seed: true }),
    list,
  },
});
