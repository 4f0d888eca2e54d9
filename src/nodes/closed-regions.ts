import { z } from 'zod';
import { defineNode } from '../graph/node-kind.ts';
import { regionEditSchema } from '../graph/region-edits.ts';
import { choice, measure } from './settings.ts';

export const closedRegions = defineNode({
  kind: 'closed-regions',
  version: 2,
  title: 'Closed regions',
  help: 'Finds every area that lines close off and grows it under the line.',
  role: 'artwork',
  runs: 'structure',
  namesRegions: true,
  inputs: { drawing: { type: 'drawing' } },
  outputs: { regions: { type: 'regions' } },
  settings: z.strictObject({
    gapMm: measure('mm', 0, 5, 0.5, {
      title: 'Gap',
      help: 'The widest opening in a line that still counts as closed.',
    }),
    smallestMm2: measure('mm2', 0, 100, 0.3, {
      title: 'Smallest region',
      help: 'Areas smaller than this join one another, or the region around them.',
    }),
    tuckMm: measure('mm', 0, 5, 1, {
      title: 'Tuck',
      help: 'How far a region reaches under the line at most; neighbours meet on its centre.',
    }),
    roughnessMm: measure('mm', 0, 2, 0, {
      title: 'Roughness',
      help: 'For rough lines: pockets that keep nearer to the line than this belong to the region beside them.',
    }),
    frame: choice(['parts', 'joins'], 'parts', {
      title: 'Frame',
      help: 'Whether the edge of the picture parts what it cuts in pieces, or the pieces are one region.',
    }),
    edits: z.array(regionEditSchema).max(5000).default([]).meta({
      title: 'By hand',
      help: 'Walls opened and drawn, regions joined and cut, marks ignored: made on the print.',
    }),
  }),
});
