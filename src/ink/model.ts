import type { Lab } from '../graph/inks.ts';
import { growthOf } from './growth.ts';
import { resolveInkLab } from './ink-lab.ts';
import { labOfXyz, xyzOfLab } from './lab.ts';
import { keyOfInks } from './measured.ts';
import { checkPrint, checkTints, type PrintInput } from './model-input.ts';
import { type ModelNote, notesOf } from './notes.ts';
import { filmOf } from './overprint.ts';
import { primariesOf } from './primaries.ts';
import { readingsOf } from './readings.ts';
import { type Xyz, xyzOfSpectrum } from './spectrum.ts';
import { glareOf } from './surface.ts';
import { swatchOf } from './swatch.ts';
import { tintColours } from './tint-colours.ts';
import { toneScaleOf } from './tone.ts';

export interface PrintModel {
  /** How many inks. */
  count: number;
  /**
   * Square roots of XYZ (D50, absolute, Y = 1 for the perfect diffuser) of a recipe.
   * @param tints nominal share 0..1 of each ink in print order; throws when one is missing or out of range.
   */
  rootXyzOf(tints: ArrayLike<number>): Xyz;
  /** Lab (D50, absolute) of a recipe; `tints` as for `rootXyzOf`. */
  labOf(tints: ArrayLike<number>): Lab;
  /** Lab of paper, solids and overprints: 2^n entries, bit i of the index says that ink i is there. */
  readonly primaries: readonly Lab[];
  /** Whether a primary was measured (the paper counts as measured) or is a prediction. */
  isMeasured(set: number): boolean;
  /** What to tell beside these colours. */
  readonly notes: readonly ModelNote[];
}

/**
 * The colours of a print in spot inks on its paper: swatches to spectra, surface, overprints in print
 * order, dot gain and tints. Pure; the same input gives the same bits in every engine.
 *
 * Throws a RangeError that says what to change for input it cannot use. Colours beyond the model are
 * clipped and told in `notes`, never refused.
 */
export function printModel(input: PrintInput): PrintModel {
  checkPrint(input);
  const { paper, inks, passes = inks.map((_, i) => i + 1), takeUp, takeUps, reference = paper } = input;
  const count = inks.length;
  const ids = inks.map((ink) => ink.id);

  const readings = readingsOf(input.measured ?? [], ids);
  const readingOf = (id: string) => readings.counting.get(keyOfInks([id]));
  const paperSwatch = swatchOf(xyzOfLab(paper.lab));
  const paperSpectrum = paperSwatch.reflectance;
  const referenceSpectrum = swatchOf(xyzOfLab(reference.lab)).reflectance;
  const swatches = inks.map((ink) => readingOf(ink.id)?.swatch ?? swatchOf(xyzOfLab(resolveInkLab(ink))));
  const solids = swatches.map((swatch) => swatch.reflectance);

  const glare = glareOf(paper.surface, [paperSpectrum, ...solids]);
  const referenceGlare = glareOf(reference.surface, [referenceSpectrum, ...solids]);
  const films = inks.map((ink) => {
    const read = readingOf(ink.id);
    const [stock, ground] = read ? [paperSpectrum, glare] : [referenceSpectrum, referenceGlare];
    const { reflectance } = swatchOf(xyzOfLab(read?.lab ?? resolveInkLab(ink)), ground);
    return filmOf(reflectance, stock, ink.opacity, ground);
  });
  const primaries = primariesOf({
    paper: paperSpectrum,
    glare,
    films,
    ids,
    passes,
    takeUp,
    takeUps,
    readings: readings.counting,
  });

  const growths = inks.map((ink, i) =>
    growthOf(ink, paper.surface, toneScaleOf(paperSpectrum, primaries.reflectanceOf(1 << i))),
  );
  const xyzOfCoverages = tintColours(primaries, count);
  function xyzOf(tints: ArrayLike<number>): Xyz {
    checkTints(tints, count);
    const coverages = new Float64Array(count);
    for (let ink = 0; ink < count; ink++) coverages[ink] = growths[ink]!(tints[ink]!);
    return xyzOfCoverages(coverages);
  }

  const labOf = (set: number): Lab => labOfXyz(xyzOfSpectrum(primaries.reflectanceOf(set)));
  let labs: readonly Lab[] | null = null;
  let notes: readonly ModelNote[] | null = null;
  const { isMeasured } = primaries;
  return {
    count,
    rootXyzOf: (tints) => xyzOf(tints).map(Math.sqrt) as Xyz,
    labOf: (tints) => labOfXyz(xyzOf(tints)),
    get primaries() {
      labs ??= Array.from({ length: 2 ** count }, (_, set) => labOf(set));
      return labs;
    },
    isMeasured,
    get notes() {
      notes ??= notesOf({ paper, paperSwatch, inks, swatches, readings, labOf, isMeasured });
      return notes;
    },
  };
}
