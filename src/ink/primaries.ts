import type { TakeUp } from '../graph/inks.ts';
import { correctByPairs, errorRatio, keyOfInks } from './measured.ts';
import { DRY, type Film, layUpon, WET_ON_WET } from './overprint.ts';
import type { Reading } from './readings.ts';
import type { Spectrum } from './spectrum.ts';
import { bodyOf, readingOf } from './surface.ts';

export interface PrimariesInput {
  /** Reflectance of the paper alone. */
  paper: Spectrum;
  /** Surface glare of the print, see `glareOf`. */
  glare: number;
  /** In print order, with the ids and passes of the same length. */
  films: readonly Film[];
  ids: readonly string[];
  passes: readonly number[];
  /** Take-up on an ink of an earlier pass, 0..1, default 0.95. */
  takeUp?: number | undefined;
  /** Where two passes differ from that or from wet on wet. */
  takeUps?: readonly TakeUp[] | undefined;
  /** What was read of solids and overprints, by `keyOfInks`. */
  readings: ReadonlyMap<string, Reading>;
}

export interface Primaries {
  /** Reflectance of paper with the solids of a set on each other; bit i of the set is ink i. */
  reflectanceOf(set: number): Spectrum;
  /** Whether that reflectance was measured; the paper counts as measured. */
  isMeasured(set: number): boolean;
}

const membersOf = (set: number, count: number): number[] =>
  Array.from({ length: count }, (_, ink) => ink).filter((ink) => set & (1 << ink));

/** The solids and overprints of a print, each worked out when first asked for and then kept. */
export function primariesOf(input: PrimariesInput): Primaries {
  const { paper, glare, films, ids, passes, takeUp = DRY, takeUps = [], readings } = input;
  const bodies = new Map<number, Spectrum>([[0, paper.map((read) => bodyOf(read, glare))]]);
  const ratios = new Map<number, Spectrum>();
  const reflectances = new Map<number, Spectrum>([[0, paper]]);

  const measuredOf = (inks: readonly number[]): Spectrum | undefined =>
    readings.get(keyOfInks(inks.map((ink) => ids[ink]!)))?.swatch.reflectance;

  /** The ink directly beneath decides. */
  function takeUpOn(beneath: readonly number[], ink: number): number {
    if (beneath.length === 0) return 1;
    const below = passes[beneath.at(-1)!]!;
    const above = passes[ink]!;
    const known = takeUps.find((pair) => pair.below === below && pair.above === above);
    return known?.takeUp ?? (below === above ? WET_ON_WET : takeUp);
  }

  function bodyOfSet(set: number): Spectrum {
    const known = bodies.get(set);
    if (known) return known;
    const inks = membersOf(set, films.length);
    const top = inks.pop()!;
    const body = layUpon(bodyOfSet(set - (1 << top)), films[top]!, takeUpOn(inks, top));
    bodies.set(set, body);
    return body;
  }

  const readingsOf = (body: Spectrum): Spectrum => body.map((value) => readingOf(value, glare));

  function ratioOfPair(one: number, other: number): Spectrum | undefined {
    const pair = (1 << one) | (1 << other);
    const read = measuredOf([one, other]);
    if (!read) return undefined;
    const ratio = ratios.get(pair) ?? errorRatio(read, readingsOf(bodyOfSet(pair)), glare);
    ratios.set(pair, ratio);
    return ratio;
  }

  function predict(set: number, inks: readonly number[]): Spectrum {
    const body = bodyOfSet(set);
    if (inks.length < 3) return readingsOf(body);
    const pairs = inks.flatMap((one, i) => inks.slice(i + 1).map((other) => ratioOfPair(one, other)));
    const known = pairs.filter((ratio) => ratio !== undefined);
    return readingsOf(known.length > 0 ? correctByPairs(body, inks.length, known) : body);
  }

  function reflectanceOf(set: number): Spectrum {
    const known = reflectances.get(set);
    if (known) return known;
    const inks = membersOf(set, films.length);
    const reflectance = measuredOf(inks) ?? predict(set, inks);
    reflectances.set(set, reflectance);
    return reflectance;
  }

  return {
    reflectanceOf,
    isMeasured: (set) => set === 0 || measuredOf(membersOf(set, films.length)) !== undefined,
  };
}
