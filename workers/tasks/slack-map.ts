import { driftTowards, type Tolerance } from '../../src/press/slack.ts';
import { type Plane, pxToMm } from '../kernels/plane.ts';
import { offsetOf } from '../kernels/slack.ts';
import type { PlateFaults } from './slack-visible.ts';

/** What becomes of a place within the tolerance, the graver the higher. */
export const SLACK_MARK = { none: 0, holds: 1, overprint: 2, paper: 3, muchPaper: 4 } as const;

/** Places where faults first show, in small. */
export interface SlackMap {
  width: number;
  height: number;
  /** Printed size, mm. */
  mm: [number, number];
  /** One of `SLACK_MARK` a pixel. */
  marks: Uint8Array<ArrayBuffer>;
}

/** Longest side of the map, px. */
const MOST_SIDE = 1600;

const UNKNOWN = 255;

/** A map of what shows where within a tolerance; of places that fall on one pixel the gravest counts. */
export function drawSlack(
  faults: readonly PlateFaults[],
  { width, height }: Plane,
  ppi: number,
  tolerance: Tolerance,
): SlackMap {
  const scale = Math.max(1, Math.ceil(Math.max(width, height) / MOST_SIDE));
  const size = [Math.ceil(width / scale), Math.ceil(height / scale)] as const;
  const marks = new Uint8Array(size[0] * size[1]);
  const known = new Uint8Array(2 * 65536).fill(UNKNOWN);
  for (const { points, shown } of faults)
    for (let k = 0; k < points.at.length; k++) {
      const fault = shown[points.group[k]!];
      if (!fault) continue;
      const at = points.at[k]!;
      const place = Math.floor(at / width / scale) * size[0] + Math.floor((at % width) / scale);
      const key = points.offset[k]! * 2 + Number(fault.paper);
      if (known[key] === UNKNOWN) known[key] = markOf(points.offset[k]!, fault.paper, ppi, tolerance);
      const mark = known[key]!;
      if (mark > marks[place]!) marks[place] = mark;
    }
  return {
    width: size[0],
    height: size[1],
    mm: [pxToMm(width, ppi), pxToMm(height, ppi)],
    marks,
  };
}

function markOf(offset: number, paper: boolean, ppi: number, tolerance: Tolerance): number {
  const [dx, dy] = offsetOf(offset);
  const px = Math.sqrt(dx * dx + dy * dy);
  const driftMm = driftTowards([dx / px, dy / px], tolerance);
  const shortMm = driftMm - pxToMm(px - 1, ppi);
  if (shortMm <= 0) return SLACK_MARK.holds;
  if (!paper) return SLACK_MARK.overprint;
  return shortMm > driftMm / 2 ? SLACK_MARK.muchPaper : SLACK_MARK.paper;
}
