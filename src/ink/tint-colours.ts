import type { Primaries } from './primaries.ts';
import { type QuadraticForms, quadraticForms, xyzOfForms } from './quadratic.ts';
import { type Spectrum, type Xyz, xyzOfSpectrum } from './spectrum.ts';
import { demichelWeights, halftone } from './tints.ts';

/** Up to this many inks on a spot a tint needs no spectra. */
const MOST_IN_FORMS = 5;
/** How many sets of inks keep their forms: those of three inks take 1 kB, of five 13 kB. */
const MOST_FORMS = 1024;
/** How many recipes of more inks are remembered. */
const MOST_REMEMBERED = 65_536;

/**
 * XYZ of coverages, 0..1 for each ink in print order. Overprints are worked out when a recipe first needs them;
 * only the inks that are there count, so that few inks of a print with many cost no more than in a print of few.
 */
export function tintColours(primaries: Primaries, count: number): (coverages: Float64Array) => Xyz {
  const roots = new Map<number, Spectrum>();
  const forms = new Map<number, QuadraticForms>();
  const remembered = new Map<string, Xyz>();

  function rootOf(set: number): Spectrum {
    const root = roots.get(set) ?? primaries.reflectanceOf(set).map(Math.sqrt);
    roots.set(set, root);
    return root;
  }

  function formsOf(present: number, inks: readonly number[]): QuadraticForms {
    const known = forms.get(present);
    if (known) return known;
    if (forms.size >= MOST_FORMS) forms.clear();
    const setOf = (subset: number): number =>
      inks.reduce((set, ink, i) => (subset & (1 << i) ? set + (1 << ink) : set), 0);
    const made = quadraticForms(
      Array.from({ length: 2 ** inks.length }, (_, subset) => rootOf(setOf(subset))),
    );
    forms.set(present, made);
    return made;
  }

  function bySpectra(coverages: Float64Array): Xyz {
    const key = coverages.join();
    const known = remembered.get(key);
    if (known) return known;
    if (remembered.size >= MOST_REMEMBERED) remembered.clear();
    const xyz = xyzOfSpectrum(halftone(demichelWeights(coverages), rootOf));
    remembered.set(key, xyz);
    return xyz;
  }

  const all = Array.from({ length: count }, (_, ink) => ink);
  const byForms = (coverages: Float64Array): Xyz =>
    xyzOfForms(formsOf(2 ** count - 1, all), demichelWeights(coverages));

  function sparse(coverages: Float64Array): Xyz {
    const inks = [...coverages.keys()].filter((ink) => coverages[ink] !== 0);
    if (inks.length > MOST_IN_FORMS) return bySpectra(coverages);
    const present = inks.reduce((set, ink) => set + (1 << ink), 0);
    return xyzOfForms(formsOf(present, inks), demichelWeights(inks.map((ink) => coverages[ink]!)));
  }

  return count <= MOST_IN_FORMS ? byForms : sparse;
}
