import type { Stock } from '../../src/graph/inks.ts';
import type { PrintInput } from '../../src/ink/model-input.ts';
import type { InksValue } from '../engine/values.ts';

/** What the colours of these plates, or of the plates of an Ink set, depend on when they print on a paper. */
export function printInput(
  { plates, printing }: Pick<InksValue, 'plates' | 'printing'>,
  paper: Stock,
): PrintInput {
  return {
    paper,
    inks: plates.map(({ ink }) => ink),
    passes: plates.map(({ pass }) => pass),
    ...printing,
  };
}
