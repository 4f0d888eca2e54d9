import { z } from 'zod';
import { defineNode } from '../graph/node-kind.ts';
import { choice, measure, perPlate } from './settings.ts';

export const halftone = defineNode({
  kind: 'halftone',
  version: 1,
  title: 'Halftone',
  help: 'Turns the tints of the plates into dots of full ink, for film, screens and printers that only know ink or none.',
  role: 'artwork',
  runs: 'surface',
  inputs: { plates: { type: 'plates' } },
  outputs: { plates: { type: 'plates' } },
  settings: z.strictObject({
    how: choice(['screened', 'planned'], 'screened', {
      title: 'Dots',
      help: 'Screened: made here. Planned: the press makes its own; only the plan goes with the plates.',
    }),
    screen: choice(['am', 'fm'], 'am', {
      title: 'Screen',
      help: 'AM: dots in rows that grow with the tint. FM: dots of one size, more of them for a darker tint.',
    }),
    lpi: measure('lpi', 10, 300, 45, { title: 'Ruling', help: 'AM: rows of dots to the inch.' }),
    angleDegOf: perPlate(z.number().min(-180).max(180), {
      title: 'Angle, by plate',
      help: 'AM: anticlockwise from across the sheet. Left out: the strongest ink at 45 degrees, the next at 75 and 15.',
    }),
    dot: choice(['round', 'ellipse', 'line'], 'round', {
      title: 'Shape of the dot',
      help: 'AM: round dots; ellipses, which join one way before the other; or lines.',
    }),
    dotMm: measure('mm', 0.01, 1, 0.1, { title: 'Size of the dot', help: 'FM: side of one dot.' }),
    devicePpi: z.number().min(36).max(5080).nullable().default(null).meta({
      title: 'Device',
      unit: 'ppi',
      help: 'Pixels per inch of what images the plates, a whole multiple of the drawing. Empty: as the drawing.',
    }),
    tone: choice(['as-is', 'compensated'], 'as-is', {
      title: 'Tone curve',
      help: 'As is: tints grow on the press as the proof shows. Compensated: dots are made smaller by what the ink grows.',
    }),
  }),
});
