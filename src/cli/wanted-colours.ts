import { z } from 'zod';
import { hexSchema, type Lab, labSchema } from '../graph/inks.ts';
import { readJson } from '../graph/json-text.ts';
import { checkShape } from '../graph/parse-job.ts';
import type { WantedColour } from '../ink/ink-sets.ts';
import { labOfXyz } from '../ink/lab.ts';
import { xyzOfHex } from '../ink/srgb.ts';

const ADVICE =
  'write a colour as "#rrggbb", [L, a, b], {"hex": ...} or {"lab": ...}, the last two with a "weight" if need be';

const weight = z.number().positive().default(1);
const colourSchema = z.union(
  [
    hexSchema.transform((hex) => ({ hex, weight: 1 })),
    labSchema.transform((lab) => ({ lab, weight: 1 })),
    z.object({ lab: labSchema, weight }),
    z.object({ hex: hexSchema, weight }),
    z
      .object({ wantedLab: labSchema, areaMm2: weight })
      .transform(({ wantedLab, areaMm2 }) => ({ lab: wantedLab, weight: areaMm2 })),
  ],
  ADVICE,
);
const listSchema = z.array(colourSchema).min(1, 'there is no colour in it; give at least one').max(1000);

/**
 * Colours from a JSON text: a list of them, one under `colours`, or the `regions` of a recipes file, which count by
 * their area.
 *
 * @throws BadInput that names the place and what to do
 */
export function wantedColours(text: string): WantedColour[] {
  const file = readJson(text, 'list of colours') as
    | { colours?: unknown; regions?: unknown }
    | unknown[]
    | null;
  const list = Array.isArray(file) ? file : (file?.colours ?? file?.regions);
  return checkShape(listSchema, list, 'colours').map((colour) => ({
    lab: 'lab' in colour ? colour.lab : labOfHex(colour.hex),
    weight: colour.weight,
  }));
}

const labOfHex = (hex: string): Lab => labOfXyz(xyzOfHex(hex));
