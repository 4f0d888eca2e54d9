import { z } from 'zod';
import { defineNode } from '../graph/node-kind.ts';
import { choice, measure } from './settings.ts';

const yesNo = (usual: boolean, title: string, help: string) =>
  z.boolean().default(usual).meta({ title, help });
const sizeMm = z.number().min(20).max(2000);
const shift = z.number().min(-500).max(500);

export const pressSheet = defineNode({
  kind: 'press-sheet',
  version: 1,
  title: 'Press sheet',
  help: 'The sheet that runs: its size, the trim and bleed on it, marks, and how film is turned.',
  role: 'delivery',
  runs: 'surface',
  inputs: {},
  outputs: { sheet: { type: 'sheet' } },
  settings: z.strictObject({
    size: choice(['fit', 'a5', 'a4', 'a3', 'a2', 'ra3', 'sra3', 'own'], 'fit', {
      title: 'Sheet',
      help: 'Fit: as large as trim, bleed and marks need. Own: the size below.',
    }),
    ownMm: z.tuple([sizeMm, sizeMm]).default([297, 420]).meta({
      title: 'Own size',
      unit: 'mm',
      help: 'Width and height of a sheet of your own.',
    }),
    shiftMm: z.tuple([shift, shift]).default([0, 0]).meta({
      title: 'Shift on the sheet',
      unit: 'mm',
      help: 'From the middle to the right and down. On the back of a sheet it goes to the left.',
    }),
    bleedMm: measure('mm', 0, 30, 0, {
      title: 'Bleed',
      help: 'What prints beyond the trim, so that a cut a little off shows no paper.',
    }),
    bleedFrom: choice(['paper', 'edge'], 'paper', {
      title: 'Bleed of art that ends at the trim',
      help: 'Paper: stays empty. Edge: fills and lines run on outwards from the edge of the plates.',
    }),
    feedEdge: choice(['top', 'right', 'bottom', 'left'], 'top', {
      title: 'Feed edge',
      help: 'The edge that enters the press first.',
    }),
    side: choice(['front', 'back'], 'front', {
      title: 'Side',
      help: 'The back of a sheet stands where the front does, seen from behind.',
    }),
    cropMarks: yesNo(true, 'Crop marks', 'Where the sheet is cut.'),
    registerMarks: yesNo(true, 'Register marks', 'A cross in a ring at every side, on all plates.'),
    plateNames: yesNo(true, 'Names of plates', 'Name and place in print order, each on its own plate.'),
    colourBar: yesNo(true, 'Colour bar', 'A solid and a half tint of every plate.'),
    tintWedge: yesNo(false, 'Tint wedge', 'Steps from 5 to 95 % of every plate.'),
    emulsion: choice(['up', 'down'], 'up', {
      title: 'Emulsion of film',
      help: 'Down: film is turned over, so that its coated side lies on the plate.',
    }),
    mirrored: yesNo(false, 'Mirrored film', 'Turned over once more: for blocks, and for printing through.'),
    negative: yesNo(false, 'Negative film', 'Clear where ink prints.'),
  }),
});
