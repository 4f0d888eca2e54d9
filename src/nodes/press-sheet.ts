import { z } from 'zod';
import { defineNode } from '../graph/node-kind.ts';
import { choice, measure } from './settings.ts';

const yesNo = (usual: boolean, title: string, help: string) =>
  z.boolean().default(usual).meta({ title, help });

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
    own: z
      .strictObject({
        widthMm: measure('mm', 20, 2000, 297, { title: 'Width', help: 'Of a sheet of your own.' }),
        heightMm: measure('mm', 20, 2000, 420, { title: 'Height', help: 'Of a sheet of your own.' }),
      })
      .prefault({})
      .meta({ title: 'Own size', help: 'Of a sheet that is none of the common ones.' }),
    shift: z
      .strictObject({
        rightMm: measure('mm', -500, 500, 0, { title: 'To the right', help: 'From the middle.' }),
        downMm: measure('mm', -500, 500, 0, { title: 'Down', help: 'From the middle.' }),
      })
      .prefault({})
      .meta({
        title: 'Shift on the sheet',
        help: 'Where the trim lies off the middle. On the back of a sheet right is left.',
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
