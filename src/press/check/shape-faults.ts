import type { Complaint } from '../../graph/complaint.ts';
import type { Press } from '../../graph/press.ts';
import { figureOf } from '../profiles.ts';

/** A region as far as its shape matters. */
export interface RegionShape {
  id: string;
  areaMm2: number;
  anchorMm: readonly [number, number];
  boxMm: readonly [number, number, number, number];
}

/** Regions so narrow that fills cannot hold them: their area over the longest way across is below the thinnest line. */
export function sliverFaults(regions: readonly RegionShape[], press: Press): Complaint[] {
  const least = figureOf(press, 'leastPositiveMm');
  if (least === null) return [];
  const slivers = regions.filter((region) => widthOf(region) < least);
  if (slivers.length === 0) return [];
  const narrowest = slivers.reduce((a, b) => (widthOf(b) < widthOf(a) ? b : a));
  return [
    {
      code: 'slivers',
      severity: 'warning',
      message: `${slivers.length} ${slivers.length === 1 ? 'region is' : 'regions are'} narrower than the ${least} mm the press holds. Join them to a neighbour, or raise the smallest region in Closed regions.`,
      placeMm: [...narrowest.anchorMm] as [number, number],
      measure: Math.round(widthOf(narrowest) * 100) / 100,
      region: narrowest.id,
    },
  ];
}

function widthOf({ areaMm2, boxMm: [left, top, right, bottom] }: RegionShape): number {
  return areaMm2 / Math.hypot(right - left, bottom - top);
}

/** Plates that print the same: one of them is enough. */
export function identicalFault(first: string, second: string): Complaint {
  return {
    code: 'plates-identical',
    severity: 'error',
    message: `Plates ${first} and ${second} are the same in every pixel. Take one out of the ink set, or give its regions other tints.`,
    plate: second,
  };
}

/** Line left blank in a field of solid: a plate that was inverted on its way. */
export function polarityFault(plate: string, onLine: number, all: number): Complaint[] {
  if (onLine > 10 || all < 90) return [];
  return [
    {
      code: 'plate-inverted',
      severity: 'error',
      message: `Plate ${plate} is solid all over and blank where the line is: it looks inverted. Turn its picture round where it comes in.`,
      plate,
    },
  ];
}
