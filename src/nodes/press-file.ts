import { z } from 'zod';
import { defineNode } from '../graph/node-kind.ts';

export const pressFile = defineNode({
  kind: 'press-file',
  version: 1,
  title: 'Press file',
  help: 'Delivers the plates that reach it to the printer.',
  role: 'delivery',
  runs: 'surface',
  inputs: { plates: { type: 'plates' }, sheet: { type: 'sheet', optional: true } },
  outputs: {},
  settings: z.strictObject({}),
});
