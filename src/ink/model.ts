import type { Lab } from '../graph/inks.ts';
import { resolveInkLab } from './ink-lab.ts';
import { labOfXyz, xyzOfLab } from './lab.ts';
import { keyOfInks, measuredSwatches } from './measured.ts';
import { checkPrint, checkTints, type PrintInput } from './model-input.ts';
import { type ModelNote, notesOf } from './notes.ts';
import { filmOf } from './overprint.ts';
import { type Primaries, primariesOf } from './primaries.ts';
import { quadraticForms, xyzOfForms } from './quadratic.ts';
import { type Spectrum, type Xyz, xyzOfSpectrum } from './spectrum.ts';
import { glareOf } from './surface.ts';
import { swatchOf } from './swatch.ts';
import { demichelWeights, grownTint, halftone, SURFACE_GAIN } from './tints.ts';
import { alongCurve, coverageOfTone, toneScaleOf } from './tone.ts';

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
  notes: readonly ModelNote[];
}

/** Up to this many inks every overprint is worked out at once and tints need no spectra. */
const MOST_INKS_AT_ONCE = 5;
/** How many recipes of a print with more inks are remembered. */
const MOST_REMEMBERED = 65_536;

type XyzOfCoverages = (coverages: Float64Array) => Xyz;

function byForms(primaries: Primaries, count: number): XyzOfCoverages {
  const roots = Array.from({ length: 2 ** count }, (_, set) => primaries.reflectanceOf(set).map(Math.sqrt));
  const forms = quadraticForms(roots);
  return (coverages) => xyzOfForms(forms, demichelWeights(coverages));
}

/** Exact and slow, an overprint worked out when a recipe first needs it, so recipes are remembered. */
function bySpectra(primaries: Primaries): XyzOfCoverages {
  const roots = new Map<number, Spectrum>();
  const remembered = new Map<string, Xyz>();
  function rootOf(set: number): Spectrum {
    const root = roots.get(set) ?? primaries.reflectanceOf(set).map(Math.sqrt);
    roots.set(set, root);
    return root;
  }
  return (coverages) => {
    const key = coverages.join();
    const known = remembered.get(key);
    if (known) return known;
    if (remembered.size >= MOST_REMEMBERED) remembered.clear();
    const xyz = xyzOfSpectrum(halftone(demichelWeights(coverages), rootOf));
    remembered.set(key, xyz);
    return xyz;
  };
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
  const { paper, inks, passes = inks.map((_, i) => i), takeUp, reference = paper, curves } = input;
  const count = inks.length;
  const ids = inks.map((ink) => ink.id);

  const measured = measuredSwatches(input.measured ?? [], ids);
  const paperSwatch = swatchOf(xyzOfLab(paper.lab));
  const paperSpectrum = paperSwatch.reflectance;
  const referenceSpectrum = swatchOf(xyzOfLab(reference.lab)).reflectance;
  const typed = inks.map(
    (ink) => measured.get(keyOfInks([ink.id])) ?? swatchOf(xyzOfLab(resolveInkLab(ink))),
  );
  const solids = typed.map((swatch) => swatch.reflectance);

  const glare = glareOf(paper.surface, [paperSpectrum, ...solids]);
  const referenceGlare = glareOf(reference.surface, [referenceSpectrum, ...solids]);
  const films = inks.map((ink, i) =>
    measured.has(keyOfInks([ink.id]))
      ? filmOf(solids[i]!, paperSpectrum, ink.opacity, glare)
      : filmOf(solids[i]!, referenceSpectrum, ink.opacity, referenceGlare),
  );
  const primaries = primariesOf({ paper: paperSpectrum, glare, films, ids, passes, takeUp, measured });

  const scales = inks.map((_, i) => toneScaleOf(paperSpectrum, primaries.reflectanceOf(1 << i)));
  function coverageOf(ink: number, tint: number): number {
    const curve = curves?.[ink];
    if (curve) return coverageOfTone(scales[ink]!, alongCurve(curve, tint));
    return grownTint(tint, inks[ink]!.gain ?? SURFACE_GAIN[paper.surface]);
  }

  const xyzOfCoverages = count <= MOST_INKS_AT_ONCE ? byForms(primaries, count) : bySpectra(primaries);
  function xyzOf(tints: ArrayLike<number>): Xyz {
    checkTints(tints, count);
    return xyzOfCoverages(Float64Array.from(tints, (tint, ink) => coverageOf(ink, tint)));
  }

  const sets = Array.from({ length: 2 ** count }, (_, set) => set);
  let labs: readonly Lab[] | null = null;
  return {
    count,
    rootXyzOf: (tints) => xyzOf(tints).map(Math.sqrt) as Xyz,
    labOf: (tints) => labOfXyz(xyzOf(tints)),
    get primaries() {
      labs ??= sets.map((set) => labOfXyz(xyzOfSpectrum(primaries.reflectanceOf(set))));
      return labs;
    },
    isMeasured: primaries.isMeasured,
    notes: notesOf({
      paper: paperSwatch,
      inks,
      solids: typed,
      measured,
      predicted: sets.some((set) => (set & (set - 1)) !== 0 && !primaries.isMeasured(set)),
    }),
  };
}
