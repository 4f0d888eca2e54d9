import type { ProposalRules } from '../../graph/proposal-rules.ts';

/** What a proposal needs to know of a region. */
export interface PlacedRegion {
  id: string;
  areaMm2: number;
  /** left, top, right, bottom */
  boxMm: readonly [number, number, number, number];
  touchesFrame: boolean;
  neighbours: readonly { id: string; sharedMm: number }[];
  /** Id of the region around it; null where none is. */
  inside: string | null;
  /** What it prints now, as a key. */
  now: string;
}

/** Regions that print alike, as one. */
export interface RegionClass {
  regions: readonly string[];
  areaMm2: number;
  /** Area of its regions that touch the frame. */
  frameMm2: number;
}

export interface Classes {
  classes: RegionClass[];
  /** Borders between classes: one entry a pair, `a` below `b`. */
  borders: { a: number; b: number; sharedMm: number }[];
}

/** Areas and sides that differ by less than this share count as like. */
const LIKE = 0.12;

const sides = ([left, top, right, bottom]: PlacedRegion['boxMm']) => {
  const [width, height] = [right - left, bottom - top];
  return [Math.min(width, height), Math.max(width, height)] as const;
};

const near = (one: number, other: number) => Math.abs(one - other) <= LIKE * Math.max(one, other);

function likeSized(one: PlacedRegion, other: PlacedRegion): boolean {
  const [a, b] = [sides(one.boxMm), sides(other.boxMm)];
  return near(one.areaMm2, other.areaMm2) && near(a[0], b[0]) && near(a[1], b[1]);
}

/**
 * Puts together what the rules let print alike. Neighbours come together only where they print alike now: otherwise
 * they could not be told apart.
 *
 * @param fixed ids of regions that keep what they print; each stays by itself
 */
export function classesOf(
  regions: readonly PlacedRegion[],
  rules: Pick<ProposalRules, 'asNow' | 'likeSized' | 'likePlaced' | 'groups'>,
  groups: readonly { regions: readonly string[] }[],
  fixed: ReadonlySet<string>,
): Classes {
  const place = new Map(regions.map(({ id }, i) => [id, i]));
  const beside = regions.map(
    ({ neighbours }) => new Set(neighbours.flatMap(({ id }) => place.get(id) ?? [])),
  );
  const home = regions.map((_, i) => i);
  const members = regions.map((_, i) => [i]);
  const free = (i: number) => !fixed.has(regions[i]!.id);
  const together = (a: number, b: number) => {
    for (const i of members[b]!) home[i] = a;
    members[a]!.push(...members[b]!.splice(0));
  };
  const unite = (one: number, other: number) => {
    const [a, b] = [home[one]!, home[other]!];
    if (a === b || !free(one) || !free(other)) return;
    if (members[a]!.some((i) => members[b]!.some((j) => beside[i]!.has(j)))) return;
    together(a, b);
  };
  if (rules.asNow && new Set(regions.map(({ now }) => now)).size > 1)
    for (const alike of groupsBy(regions.map(({ now }) => now))) {
      const inside = alike.filter(free);
      for (const i of inside.slice(1)) together(home[inside[0]!]!, i);
    }
  if (rules.groups)
    for (const group of groups) {
      const inside = group.regions.flatMap((id) => place.get(id) ?? []);
      for (const i of inside.slice(1)) unite(inside[0]!, i);
    }
  const bySize = regions.map((_, i) => i).sort((a, b) => regions[b]!.areaMm2 - regions[a]!.areaMm2 || a - b);
  if (rules.likeSized)
    bySize.forEach((one, at) => {
      for (let next = at + 1; next < bySize.length; next++) {
        const other = bySize[next]!;
        if (!near(regions[one]!.areaMm2, regions[other]!.areaMm2)) break;
        if (likeSized(regions[one]!, regions[other]!)) unite(one, other);
      }
    });
  if (rules.likePlaced) {
    for (const alike of groupsBy(regions.map(({ inside }) => inside)))
      for (const i of alike.slice(1)) unite(alike[0]!, i);
  }
  return numbered(regions, home, place);
}

/** Places of equal keys, in order; null keys are left out. */
function groupsBy(keys: readonly (string | null)[]): number[][] {
  const groups = new Map<string, number[]>();
  keys.forEach((key, i) => {
    if (key === null) return;
    const group = groups.get(key);
    if (group) group.push(i);
    else groups.set(key, [i]);
  });
  return [...groups.values()];
}

function numbered(
  regions: readonly PlacedRegion[],
  home: readonly number[],
  place: ReadonlyMap<string, number>,
): Classes {
  const number = new Map<number, number>();
  for (const root of home) if (!number.has(root)) number.set(root, number.size);
  const classes = [...number.keys()].map(() => ({ regions: [] as string[], areaMm2: 0, frameMm2: 0 }));
  const shared = new Map<number, number>();
  regions.forEach(({ id, areaMm2, touchesFrame, neighbours }, i) => {
    const own = number.get(home[i]!)!;
    const each = classes[own]!;
    each.regions.push(id);
    each.areaMm2 += areaMm2;
    if (touchesFrame) each.frameMm2 += areaMm2;
    for (const neighbour of neighbours) {
      const other = place.get(neighbour.id);
      if (other === undefined || other < i) continue;
      const key = pairOf(own, number.get(home[other]!)!, classes.length);
      shared.set(key, (shared.get(key) ?? 0) + neighbour.sharedMm);
    }
  });
  const borders = [...shared]
    .map(([key, sharedMm]) => ({ a: Math.floor(key / classes.length), b: key % classes.length, sharedMm }))
    .filter(({ a, b }) => a !== b);
  return { classes, borders };
}

const pairOf = (one: number, other: number, count: number) =>
  Math.min(one, other) * count + Math.max(one, other);
