import type { MappedRegion, RegionMap } from '../../workers/client.ts';
import type { Point } from './camera.ts';

/** Label of the region at a place of the sheet, mm; 0 where there is none. */
export function labelAt(map: RegionMap, { x, y }: Point): number {
  const column = Math.floor((x * map.ppi) / 25.4);
  const row = Math.floor((y * map.ppi) / 25.4);
  if (column < 0 || row < 0 || column >= map.width || row >= map.height) return 0;
  return map.labels[row * map.width + column]!;
}

/** The region at a place of the sheet, mm; null where there is none. */
export function regionAt(map: RegionMap, mm: Point): MappedRegion | null {
  return map.regions[labelAt(map, mm) - 1] ?? null;
}

/** Ids of the regions that a straight stroke crosses, in the order it meets them. */
export function regionsAlong(map: RegionMap, from: Point, to: Point): string[] {
  const pixels = (Math.hypot(to.x - from.x, to.y - from.y) * map.ppi) / 25.4;
  const steps = Math.max(1, Math.ceil(pixels * 2));
  const ids = new Set<string>();
  for (let i = 0; i <= steps; i++) {
    const share = i / steps;
    const region = regionAt(map, {
      x: from.x + (to.x - from.x) * share,
      y: from.y + (to.y - from.y) * share,
    });
    if (region) ids.add(region.id);
  }
  return [...ids];
}
