import { z } from 'zod';
import { defineNode, type Preset } from '../graph/node-kind.ts';
import { choice, measure, perPlate, seed } from './settings.ts';

const settings = z.strictObject({
  pattern: choice(['mottle', 'cloud', 'speckle', 'fibre', 'stipple'], 'mottle', {
    title: 'Grain',
    help: 'Blotches of many sizes, soft clouds, scattered specks, hair-like strokes, or dots that grow with the tint.',
  }),
  sizeMm: measure('mm', 0.05, 20, 0.35, {
    title: 'Size',
    help: 'Of a mottle, its largest blotches; of the others, from one blotch to the next.',
  }),
  strengthPercent: measure('%', 0, 100, 35, {
    title: 'Strength',
    help: 'How far the tint wanders from its mean.',
  }),
  strengthPercentOf: perPlate(z.number().min(0).max(100), {
    title: 'Strength, by plate',
    help: 'For single plates.',
  }),
  hardness: measure('%', 0, 100, 15, {
    title: 'Hardness',
    help: 'From cloudy (0) to torn edges (100).',
  }),
  openSolidsPercent: measure('%', 0, 15, 0, {
    title: 'Open solids by',
    help: 'Lets the grain into solids: 10 leaves a solid at 90 % on average.',
  }),
  edgePercent: measure('%', 0, 100, 0, {
    title: 'Dry edges',
    help: 'How much stronger the grain gets towards the edge of the ink.',
  }),
  edgeMm: measure('mm', 0.1, 20, 2, {
    title: 'Reach of dry edges',
    help: 'How far from the edge of the ink the grain is stronger.',
  }),
  seed: seed(1),
});

/** The figures are ours, chosen by eye on our own specimens. */
const list: readonly Preset[] = [
  {
    name: 'Drizzle',
    help: 'Fine specks, evenly strewn',
    settings: { pattern: 'speckle', sizeMm: 0.22, strengthPercent: 55, hardness: 55 },
  },
  {
    name: 'Sea fret',
    help: 'Broad soft clouds',
    settings: { pattern: 'cloud', sizeMm: 4, strengthPercent: 40, hardness: 0 },
  },
  {
    name: 'Loam',
    help: 'Dark crumbs of many sizes; solids open a little',
    settings: { pattern: 'mottle', sizeMm: 1, strengthPercent: 55, hardness: 30, openSolidsPercent: 6 },
  },
  {
    name: 'Chaff',
    help: 'Short hair-like strokes',
    settings: { pattern: 'fibre', sizeMm: 0.7, strengthPercent: 65, hardness: 55 },
  },
  {
    name: 'Hoar frost',
    help: 'Sharp dots that grow with the tint',
    settings: { pattern: 'stipple', sizeMm: 0.5, strengthPercent: 100, hardness: 80 },
  },
  {
    name: 'Grit',
    help: 'Coarse and torn; solids open',
    settings: { pattern: 'speckle', sizeMm: 0.6, strengthPercent: 85, hardness: 90, openSolidsPercent: 10 },
  },
  {
    name: 'Dry spell',
    help: 'Little in the middle, starved at the edges',
    settings: {
      pattern: 'mottle',
      sizeMm: 0.5,
      strengthPercent: 25,
      hardness: 50,
      openSolidsPercent: 8,
      edgePercent: 90,
      edgeMm: 4,
    },
  },
];

export const plateGrain = defineNode({
  kind: 'plate-grain',
  version: 2,
  title: 'Plate grain',
  help: 'Breaks the tints up by a grain, another on every plate; each tint keeps its mean.',
  role: 'artwork',
  runs: 'surface',
  inputs: { plates: { type: 'plates' }, area: { type: 'area', optional: true } },
  outputs: { plates: { type: 'plates' } },
  settings,
  presets: { shape: settings.omit({ strengthPercentOf: true, seed: true }), list },
});
