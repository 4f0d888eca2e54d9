import { z } from 'zod';
import { idSchema } from './inks.ts';

const pointMm = z.tuple([z.number(), z.number()]);
const boxMm = z.tuple([z.number(), z.number(), z.number(), z.number()]);

/** What the job remembers of a region, so that it keeps its id when regions are found again. */
export const registerEntrySchema = z.strictObject({
  id: idSchema,
  anchorMm: pointMm,
  areaMm2: z.number().min(0),
  /** left, top, right, bottom */
  boxMm,
});

export const registerSchema = z
  .strictObject({
    /** Hash of the label map these entries were read from; null before the first save of one. */
    labelMap: z
      .string()
      .regex(/^[0-9a-f]{64}$/)
      .nullable()
      .default(null),
    /** The next number for a fresh id: ids of regions that are gone are never given again. */
    next: z.number().int().min(1).default(1),
    regions: z.array(registerEntrySchema).default([]),
  })
  .default({ labelMap: null, next: 1, regions: [] });

export type RegisterEntry = z.infer<typeof registerEntrySchema>;
export type RegionRegister = z.infer<typeof registerSchema>;

/** A found region, before it has an id. */
export type FoundRegion = Omit<RegisterEntry, 'id'>;

/** Two regions match at all when boxes and areas agree at least this well. */
const LEAST_LIKENESS = 0.3;

/** Overlap of two boxes over their union, 0..1; a box without area counts as a thin one. */
function boxOverlap(a: FoundRegion['boxMm'], b: FoundRegion['boxMm']): number {
  const width = Math.min(a[2], b[2]) - Math.max(a[0], b[0]);
  const height = Math.min(a[3], b[3]) - Math.max(a[1], b[1]);
  if (width <= 0 || height <= 0) return 0;
  const area = (box: FoundRegion['boxMm']) => (box[2] - box[0]) * (box[3] - box[1]);
  return (width * height) / (area(a) + area(b) - width * height);
}

/**
 * How sure it is that two finds are one region, 0..1: box overlap times area ratio, lowered by the distance of the
 * anchors against the size of the boxes. 1 only for the same place and size.
 */
function likeness(a: FoundRegion, b: FoundRegion): number {
  const ratio = Math.min(a.areaMm2, b.areaMm2) / Math.max(a.areaMm2, b.areaMm2, 1e-9);
  const dx = a.anchorMm[0] - b.anchorMm[0];
  const dy = a.anchorMm[1] - b.anchorMm[1];
  const size = Math.max(sideOf(a), sideOf(b));
  return boxOverlap(a.boxMm, b.boxMm) * ratio * (1 / (1 + (dx * dx + dy * dy) / (size * size)));
}

/** The longer side of a region's box, mm. */
function sideOf({ boxMm: [left, top, right, bottom] }: FoundRegion): number {
  return Math.max(right - left, bottom - top, 1e-6);
}

/** Boxes are filed by the power of two of their longer side, in square cells twice as wide. */
function levelOf(side: number): number {
  return Math.floor(Math.log2(side));
}

function centreOf({ boxMm: [left, top, right, bottom] }: FoundRegion): [number, number] {
  return [(left + right) / 2, (top + bottom) / 2];
}

/** Indices of entries by level and cell of the middle of their box. */
function fileEntries(
  entries: readonly RegisterEntry[],
  open: (entry: number) => boolean,
): Map<string, number[]> {
  const files = new Map<string, number[]>();
  entries.forEach((entry, i) => {
    if (!open(i)) return;
    const level = levelOf(sideOf(entry));
    const [x, y] = centreOf(entry).map((mm) => Math.floor(mm / 2 ** (level + 1)));
    const key = `${level} ${x} ${y}`;
    const there = files.get(key);
    if (there) there.push(i);
    else files.set(key, [i]);
  });
  return files;
}

/**
 * Entries whose box could overlap a region's well enough: then neither longer side is below `LEAST_LIKENESS` of the
 * other, and the middles are no farther apart than both half sides together.
 */
function near(region: FoundRegion, files: ReadonlyMap<string, readonly number[]>): number[] {
  const side = sideOf(region);
  const centre = centreOf(region);
  const found: number[] = [];
  for (let level = levelOf(side * LEAST_LIKENESS); level <= levelOf(side / LEAST_LIKENESS); level++) {
    const cell = 2 ** (level + 1);
    const reach = (side + cell) / 2;
    const [left, top] = centre.map((mm) => Math.floor((mm - reach) / cell)) as [number, number];
    const [right, bottom] = centre.map((mm) => Math.floor((mm + reach) / cell)) as [number, number];
    for (let y = top; y <= bottom; y++)
      for (let x = left; x <= right; x++) found.push(...(files.get(`${level} ${x} ${y}`) ?? []));
  }
  return found;
}

interface Pair {
  find: number;
  entry: number;
}

/** Place and size to a micrometre: equal for a region that did not change. */
function exactly({ anchorMm, areaMm2, boxMm }: FoundRegion): string {
  return [...anchorMm, areaMm2, ...boxMm].map((value) => Math.round(value * 1000)).join(' ');
}

/** Regions that did not change at all. */
function sameAsBefore(found: readonly FoundRegion[], entries: readonly RegisterEntry[]): Pair[] {
  const byPlace = new Map(entries.map((entry, i) => [exactly(entry), i]));
  return found.flatMap((region, find) => {
    const entry = byPlace.get(exactly(region));
    return entry === undefined ? [] : [{ find, entry }];
  });
}

/** All other pairs that could be one region, the surest first. */
function likelyPairs(
  found: readonly FoundRegion[],
  entries: readonly RegisterEntry[],
  same: readonly Pair[],
): Pair[] {
  const settledFinds = new Set(same.map(({ find }) => find));
  const settledEntries = new Set(same.map(({ entry }) => entry));
  const files = fileEntries(entries, (entry) => !settledEntries.has(entry));
  const list: (Pair & { score: number })[] = [];
  found.forEach((region, find) => {
    if (settledFinds.has(find)) return;
    for (const entry of near(region, files)) {
      const score = likeness(region, entries[entry]!);
      if (score >= LEAST_LIKENESS) list.push({ find, entry, score });
    }
  });
  return list.sort((a, b) => b.score - a.score || a.find - b.find || a.entry - b.entry);
}

/**
 * Gives every found region its id: the id of the entry it matches best, one to one, the surest pairs first; a
 * fresh `r<number>` where nothing matches. Pure; the same finds and register give the same ids.
 *
 * @param found regions in label order
 * @param register what the job remembers
 * @returns one id a region, in the same order, and the register that remembers them
 */
export function assignIds(
  found: readonly FoundRegion[],
  register: RegionRegister,
): { ids: string[]; register: RegionRegister } {
  const ids = new Array<string>(found.length).fill('');
  const taken = new Set<number>();
  const same = sameAsBefore(found, register.regions);
  for (const { find, entry } of [...same, ...likelyPairs(found, register.regions, same)]) {
    if (ids[find] !== '' || taken.has(entry)) continue;
    ids[find] = register.regions[entry]!.id;
    taken.add(entry);
  }
  const used = new Set(register.regions.map((entry) => entry.id));
  let next = register.next;
  for (let i = 0; i < ids.length; i++) {
    if (ids[i] !== '') continue;
    while (used.has(`r${next}`)) next++;
    ids[i] = `r${next++}`;
  }
  const regions = found.map((region, i) => ({
    id: ids[i]!,
    anchorMm: region.anchorMm,
    areaMm2: region.areaMm2,
    boxMm: region.boxMm,
  }));
  return { ids, register: { labelMap: register.labelMap, next, regions } };
}
