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

/** Entries are looked up in square cells of this size, mm. */
const CELL_MM = 10;

/** Overlap of two boxes over their union, 0..1; a box without area counts as a thin one. */
function boxOverlap(a: FoundRegion['boxMm'], b: FoundRegion['boxMm']): number {
  const width = Math.min(a[2], b[2]) - Math.max(a[0], b[0]);
  const height = Math.min(a[3], b[3]) - Math.max(a[1], b[1]);
  if (width <= 0 || height <= 0) return 0;
  const area = (box: FoundRegion['boxMm']) => (box[2] - box[0]) * (box[3] - box[1]);
  return (width * height) / (area(a) + area(b) - width * height);
}

/**
 * How sure it is that two finds are one region, 0..1: box overlap times area ratio, lowered by the distance of
 * the anchors against the size of the region. 1 only for the same place and size.
 */
function likeness(a: FoundRegion, b: FoundRegion): number {
  const ratio = Math.min(a.areaMm2, b.areaMm2) / Math.max(a.areaMm2, b.areaMm2, 1e-9);
  const dx = a.anchorMm[0] - b.anchorMm[0];
  const dy = a.anchorMm[1] - b.anchorMm[1];
  const reach = Math.max(a.areaMm2, b.areaMm2, 1e-9);
  return boxOverlap(a.boxMm, b.boxMm) * ratio * (1 / (1 + (dx * dx + dy * dy) / reach));
}

function cellsOf(box: FoundRegion['boxMm']): string[] {
  const cells: string[] = [];
  for (let y = Math.floor(box[1] / CELL_MM); y <= Math.floor(box[3] / CELL_MM); y++)
    for (let x = Math.floor(box[0] / CELL_MM); x <= Math.floor(box[2] / CELL_MM); x++)
      cells.push(`${x},${y}`);
  return cells;
}

function anchorCell(region: FoundRegion): string {
  return `${Math.floor(region.anchorMm[0] / CELL_MM)},${Math.floor(region.anchorMm[1] / CELL_MM)}`;
}

/** All pairs of a find and an entry that could be one region, the surest first. */
function pairs(found: readonly FoundRegion[], entries: readonly RegisterEntry[]) {
  const byCell = new Map<string, number[]>();
  entries.forEach((entry, i) => {
    const cell = anchorCell(entry);
    const there = byCell.get(cell);
    if (there) there.push(i);
    else byCell.set(cell, [i]);
  });
  const list: { find: number; entry: number; score: number }[] = [];
  found.forEach((region, find) => {
    for (const cell of cellsOf(region.boxMm))
      for (const entry of byCell.get(cell) ?? []) {
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
  for (const { find, entry } of pairs(found, register.regions)) {
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
