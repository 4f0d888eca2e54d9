import type { RegionState } from './redraw.ts';

/** A region as matching sees it; areas and places in one measure for old and new. */
export interface Placed {
  area: number;
  x: number;
  y: number;
}

/** How much of a new region lies on an old one: indices from 0. */
export interface Overlap {
  after: number;
  before: number;
  area: number;
}

export interface MatchInput {
  /** Old regions where the alignment lays them on the new drawing. */
  before: readonly Placed[];
  after: readonly Placed[];
  overlaps: readonly Overlap[];
}

export interface MatchedCase {
  after: number | null;
  before: number | null;
  state: RegionState;
  confidence: number;
}

/** Overlap over union from which a match is sure, and from which it is one at all. */
const SURE = 0.6;
const LEAST = 0.3;
/** Part of a region that must lie in another to be a piece of it. */
const PIECE = 0.6;
/** Smaller than this share of the region around it, a piece is a thing of its own there. */
const SLIGHT = 0.1;
/** Overlap over union from which a region stands where and as it stood. */
const KEPT = 0.75;
/** Leftovers match within this many times the side of the larger, when their areas differ by less than this factor. */
const NEAR = 0.9;
const LIKE = 1.8;

/** The share of two regions that is both, over what is either. */
function sharesOf({ before, after, overlaps }: MatchInput): (Overlap & { share: number })[] {
  return overlaps.map((each) => ({
    ...each,
    share: each.area / Math.max(1e-9, before[each.before]!.area + after[each.after]!.area - each.area),
  }));
}

/** Pairs whose overlap is mutual and sure. */
export function sureMatches(input: MatchInput): { after: number; before: number; share: number }[] {
  const shares = sharesOf(input);
  const best = new Map<number, number>();
  for (const { after, share } of shares) best.set(after, Math.max(share, best.get(after) ?? 0));
  return shares.filter(({ after, share }) => share > SURE && share === best.get(after));
}

/**
 * One old region for each new one where there is one: the surest overlaps first, then what is left by area and
 * distance. Pieces of one are a split, several in one are merged; a small new thing within an old region is new, and
 * the old one is told with it: it prints what lay there. Nothing is left unsaid.
 */
export function matchRegions(input: MatchInput): MatchedCase[] {
  const { before, after } = input;
  const shares = sharesOf(input).sort(
    (a, b) => b.share - a.share || a.after - b.after || a.before - b.before,
  );
  const oldOf = new Map<number, { before: number; share: number }>();
  const newOf = new Map<number, number>();
  const pair = (one: number, other: number, share: number) => {
    if (oldOf.has(one) || newOf.has(other)) return;
    oldOf.set(one, { before: other, share });
    newOf.set(other, one);
  };
  for (const { after: one, before: other, share } of shares) if (share >= LEAST) pair(one, other, share);
  const within = (key: 'after' | 'before', of: readonly Placed[]) => {
    const found = new Map<number, number>();
    for (const each of shares) {
      const home = key === 'after' ? before[each.before]! : after[each.after]!;
      if (each.area < PIECE * of[each[key]]!.area || each.area < SLIGHT * home.area || found.has(each[key]))
        continue;
      found.set(each[key], key === 'after' ? each.before : each.after);
    }
    return found;
  };
  const homeOfNew = within('after', after);
  const homeOfOld = within('before', before);
  const groundOf = new Map(
    shares
      .filter((each) => each.area >= PIECE * after[each.after]!.area)
      .map((each) => [each.after, each.before] as const),
  );
  for (const [one, other] of homeOfNew)
    if (!oldOf.has(one) && largestPiece(one, other)) pair(one, other, LEAST);
  for (const [other, one] of homeOfOld) if (!newOf.has(other) && !oldOf.has(one)) pair(one, other, LEAST);
  for (const [one, other] of leftovers(input, oldOf, newOf, homeOfNew, homeOfOld)) pair(one, other, 0.2);

  const splits = new Set(
    [...homeOfNew]
      .filter(([one, other]) => oldOf.get(one)?.before !== other && newOf.has(other))
      .map(([, other]) => other),
  );
  const merges = new Set(
    [...homeOfOld].filter(([other, one]) => newOf.get(other) !== one && oldOf.has(one)).map(([, one]) => one),
  );
  const cases: MatchedCase[] = after.map((_, one) => {
    const match = oldOf.get(one);
    if (match) {
      const { before: other, share } = match;
      const state = splits.has(other) ? 'split' : merges.has(one) ? 'merged' : standing(one, other, share);
      return { after: one, before: other, state, confidence: share };
    }
    const home = homeOfNew.get(one);
    if (home !== undefined && newOf.has(home))
      return { after: one, before: home, state: 'split', confidence: shareOf(one, home) };
    const ground = home ?? groundOf.get(one) ?? null;
    return { after: one, before: ground, state: 'new', confidence: ground === null ? 1 : 0.5 };
  });
  before.forEach((_, other) => {
    if (newOf.has(other)) return;
    const one = homeOfOld.get(other);
    if (one !== undefined && merges.has(one))
      cases.push({ after: one, before: other, state: 'merged', confidence: 0.5 });
    else cases.push({ after: null, before: other, state: 'gone', confidence: 1 });
  });
  return cases;

  function shareOf(one: number, other: number): number {
    return shares.find((each) => each.after === one && each.before === other)?.share ?? 0;
  }

  /** Whether no other new region that lies in an old one is larger. */
  function largestPiece(one: number, home: number): boolean {
    for (const [other, itsHome] of homeOfNew)
      if (
        itsHome === home &&
        (after[other]!.area > after[one]!.area || (after[other]!.area === after[one]!.area && other < one))
      )
        return false;
    return true;
  }

  function standing(one: number, other: number, share: number): 'kept' | 'moved' {
    const [a, b] = [after[one]!, before[other]!];
    const side = Math.sqrt(Math.max(a.area, b.area));
    const near = Math.abs(a.x - b.x) < 0.25 * side && Math.abs(a.y - b.y) < 0.25 * side;
    return share >= KEPT || (share >= LEAST && near && side < 60) ? 'kept' : 'moved';
  }
}

/** Pairs of what no overlap tells of, the nearest and most alike first. */
function leftovers(
  { before, after }: MatchInput,
  oldOf: ReadonlyMap<number, unknown>,
  newOf: ReadonlyMap<number, unknown>,
  homeOfNew: ReadonlyMap<number, number>,
  homeOfOld: ReadonlyMap<number, number>,
): [number, number][] {
  const olds = before.flatMap((_, other) => (newOf.has(other) || homeOfOld.has(other) ? [] : [other]));
  const found: { one: number; other: number; cost: number }[] = [];
  after.forEach((a, one) => {
    if (oldOf.has(one) || homeOfNew.has(one)) return;
    for (const other of olds) {
      const b = before[other]!;
      const [small, large] = [Math.min(a.area, b.area), Math.max(a.area, b.area)];
      const away = Math.sqrt((a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y)) / Math.sqrt(large);
      if (away <= NEAR && large <= LIKE * small) found.push({ one, other, cost: away + large / small });
    }
  });
  found.sort((p, q) => p.cost - q.cost || p.one - q.one || p.other - q.other);
  return found.map(({ one, other }) => [one, other]);
}
