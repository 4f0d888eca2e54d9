import { z } from 'zod';
import { defineNode } from '../graph/node-kind.ts';

export const proof = defineNode({
  kind: 'proof',
  version: 1,
  title: 'Proof',
  help: 'Shows the plates printed over one another on the paper.',
  role: 'simulation',
  runs: 'surface',
  inputs: { plates: { type: 'plates' }, paper: { type: 'paper' } },
  outputs: { proof: { type: 'proof' } },
  settings: z.strictObject({}),
});
