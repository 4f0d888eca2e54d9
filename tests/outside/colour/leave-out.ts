import type { Lab, Surface } from '../../../src/graph/inks.ts';
import { differenceOf } from '../../../src/ink/difference.ts';
import { labOfXyz, xyzOfLab } from '../../../src/ink/lab.ts';
import { filmOf, layUpon } from '../../../src/ink/overprint.ts';
import { type Spectrum, xyzOfSpectrum } from '../../../src/ink/spectrum.ts';
import { bodyOf, readingOf } from '../../../src/ink/surface.ts';
import { swatchOf } from '../../../src/ink/swatch.ts';
import { type Condition, OVERPRINTS, type Patch } from './conditions.ts';

/** The constants of the model that were fitted; what is left has a source of its own. */
export interface Constants {
  takeUp: number;
  opacity: number;
  glare: number;
}

const TAKE_UPS = [0.66, 0.7, 0.74, 0.78, 0.82];
const OPACITIES = [0, 0.0025, 0.005, 0.01];
const GLARES: Record<Surface, number[]> = {
  coated: [0.003, 0.005, 0.008, 0.012],
  uncoated: [0.02, 0.03, 0.04, 0.05],
  newsprint: [0.015, 0.025, 0.035],
};
const SURFACES = Object.keys(GLARES) as Surface[];

/** Overprints of a condition from its solids, with constants to choose: the model's own layers, wet on wet. */
export function overprintOf({ paper, lab }: Condition, patch: Patch, constants: Constants): Lab {
  const plain = (['C', 'M', 'Y'] as const).map((ink) => swatchOf(xyzOfLab(lab[ink])).reflectance);
  const sheet = swatchOf(xyzOfLab(paper.lab)).reflectance;
  const darkest = Math.min(...[sheet, ...plain].map((spectrum) => Math.min(...spectrum)));
  const glare = Math.min(constants.glare, 0.8 * darkest);
  let body: Spectrum = sheet.map((read) => bodyOf(read, glare));
  [...patch].forEach((ink, i) => {
    const solid = swatchOf(xyzOfLab(lab[ink as Patch]), glare).reflectance;
    body = layUpon(body, filmOf(solid, sheet, constants.opacity, glare), i === 0 ? 1 : constants.takeUp);
  });
  return labOfXyz(xyzOfSpectrum(body.map((value) => readingOf(value, glare))));
}

const errorsOf = (condition: Condition, constants: Constants): number[] =>
  OVERPRINTS.map((patch) => differenceOf(overprintOf(condition, patch, constants), condition.lab[patch]));

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** Errors of every condition for every choice of constants, glares of its own surface in order. */
function tableOf(conditions: readonly Condition[]) {
  return TAKE_UPS.flatMap((takeUp) =>
    OPACITIES.map((opacity) =>
      conditions.map((condition) =>
        GLARES[condition.paper.surface].map((glare) => errorsOf(condition, { takeUp, opacity, glare })),
      ),
    ),
  );
}

/**
 * Errors of each condition with take-up, opacity and the glare of each surface chosen for the least mean error on
 * all the others; a surface that no other condition has gets the second of its glares.
 */
export function leaveOneOut(conditions: readonly Condition[]): number[] {
  const table = tableOf(conditions);
  return conditions.flatMap((left, at) => {
    const fits = table.map((errors) => {
      const glares = SURFACES.map((surface) => {
        const others = errors.filter((_, i) => i !== at && conditions[i]!.paper.surface === surface);
        const sums = GLARES[surface].map((_, g) => sumOf(others.flatMap((each) => each[g]!)));
        const best = others.length === 0 ? 1 : sums.indexOf(Math.min(...sums));
        return { best, sum: others.length === 0 ? 0 : sums[best]! };
      });
      const own = glares[SURFACES.indexOf(left.paper.surface)]!.best;
      return { sum: sumOf(glares.map(({ sum }) => sum)), errors: errors[at]![own]! };
    });
    return fits.reduce((best, fit) => (fit.sum < best.sum ? fit : best)).errors;
  });
}
