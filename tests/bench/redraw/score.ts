import { type MatchedCase, matchRegions, sureMatches } from '../../../src/graph/match-regions.ts';
import type { RegionsValue } from '../../../workers/engine/values.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { alignLines } from '../../../workers/kernels/redraw/align.ts';
import { overlapsOf } from '../../../workers/tasks/redraw-overlaps.ts';
import { backwards } from '../../../workers/tasks/redraw-places.ts';
import { localTools } from '../../unit/support/local-tools.ts';

/** A region counts as small below so many pixels. */
const SMALL = 400;
/** A new region truly is an old one when so much of it comes from there. */
const TRUE = 0.6;

export interface Tally {
  regions: number;
  right: number;
  area: number;
  areaRight: number;
  small: number;
  smallRight: number;
  /** The same by what lies under the old anchor alone. */
  seedRight: number;
  /** New regions whose true state is known, and how many were told so. */
  classes: number;
  classesRight: number;
}

export const NOTHING: Tally = {
  regions: 0,
  right: 0,
  area: 0,
  areaRight: 0,
  small: 0,
  smallRight: 0,
  seedRight: 0,
  classes: 0,
  classesRight: 0,
};

export function added(one: Tally, other: Tally): Tally {
  const keys = Object.keys(one) as (keyof Tally)[];
  return Object.fromEntries(keys.map((key) => [key, one[key] + other[key]])) as unknown as Tally;
}

interface Side {
  line: Plane;
  regions: RegionsValue;
}

/** Matches two pages and holds the result against where each pixel truly comes from. */
export async function scoreOf(before: Side, after: Side, from: Int32Array): Promise<Tally> {
  const { tools } = localTools();
  const alignment = alignLines({ before: before.line, after: after.line, ratio: 1 });
  const place = backwards(alignment, before.line, after.line, 1);
  const sides = await overlapsOf(before.regions, after.regions, place, alignment.scale, tools, sureMatches);
  const cases = matchRegions(sides);
  const truth = truthOf(before.regions, after.regions, from);
  const seeds = bySeeds(before.regions, after.regions);
  const tally = { ...NOTHING };
  truth.home.forEach((old, one) => {
    if (old < 0) return;
    const pixels = truth.pixels[one]!;
    const right = cases.some((each) => each.after === one && each.before === old);
    tally.regions++;
    tally.area += pixels;
    if (right) tally.right++;
    if (right) tally.areaRight += pixels;
    if (seeds.get(one) === old) tally.seedRight++;
    if (pixels < SMALL) tally.small++;
    if (pixels < SMALL && right) tally.smallRight++;
  });
  for (const [one, state] of truth.states) {
    tally.classes++;
    if (cases.some((each) => each.after === one && toldAs(each) === state)) tally.classesRight++;
  }
  const lost = new Set(cases.filter(({ state }) => state === 'gone').map(({ before: old }) => old));
  for (const old of truth.gone) {
    tally.classes++;
    if (lost.has(old)) tally.classesRight++;
  }
  return tally;
}

/** Kept and moved are one: how far a redraw may move a region is no fact. */
const toldAs = ({ state }: MatchedCase) => (state === 'moved' ? 'kept' : state);

function truthOf(before: RegionsValue, after: RegionsValue, from: Int32Array) {
  const [olds, news] = [before.table.length, after.table.length];
  const counts = new Map<number, number>();
  const pixels = new Float64Array(news);
  const oldPixels = new Float64Array(olds);
  const seen = new Float64Array(olds);
  before.labels.data.forEach((label) => {
    if (label > 0) oldPixels[label - 1]!++;
  });
  after.labels.data.forEach((label, i) => {
    if (label === 0) return;
    pixels[label - 1]!++;
    const old = from[i]! < 0 ? 0 : before.labels.data[from[i]!]!;
    if (old === 0) return;
    seen[old - 1]!++;
    const key = (label - 1) * olds + old - 1;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  });
  const home = new Array<number>(news).fill(-1);
  const into = new Array<number>(olds).fill(-1);
  for (const [key, count] of counts) {
    const [one, old] = [Math.floor(key / olds), key % olds];
    if (count >= TRUE * pixels[one]!) home[one] = old;
    if (count >= TRUE * oldPixels[old]!) into[old] = one;
  }
  const sharing = (old: number) =>
    home.flatMap((each, one) => (each === old && pixels[one]! >= 0.1 * oldPixels[old]! ? [one] : []));
  const states = new Map<number, string>();
  home.forEach((old, one) => {
    if (old < 0) return;
    const absorbed = into.flatMap((each, other) =>
      each === one && other !== old && oldPixels[other]! >= 0.1 * pixels[one]! ? [other] : [],
    );
    if (sharing(old).length > 1 && sharing(old).includes(one)) states.set(one, 'split');
    else if (absorbed.length > 0) states.set(one, 'merged');
    else if (into[old] === one) states.set(one, 'kept');
  });
  const gone = into.flatMap((one, old) => {
    const slight = one >= 0 && home[one] !== old && oldPixels[old]! < 0.1 * pixels[one]!;
    return slight || seen[old]! < 0.02 * oldPixels[old]! ? [old] : [];
  });
  return { home, states, gone, pixels };
}

/** What a seed point alone would carry: the old region whose anchor a new one lies under. */
function bySeeds(before: RegionsValue, after: RegionsValue): Map<number, number> {
  const { width, height, data } = after.labels;
  const found = new Map<number, number>();
  before.table.forEach(({ anchorMm: [x, y] }, old) => {
    const [column, row] = [Math.floor((x * after.ppi) / 25.4), Math.floor((y * after.ppi) / 25.4)];
    if (column < 0 || row < 0 || column >= width || row >= height) return;
    const label = data[row * width + column]!;
    if (label > 0) found.set(label - 1, old);
  });
  return found;
}
