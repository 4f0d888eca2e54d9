import { type Plane, pxToMm } from '../kernels/plane.ts';
import { offsetOf } from '../kernels/slack.ts';
import type { PlateFaults } from './slack-visible.ts';

/** Places where faults first show, in small: two bytes a place. */
export interface SlackMap {
  width: number;
  height: number;
  /** Printed size, mm. */
  mm: [number, number];
  /** Least slack of any plate before paper, or another overprint, shows: in steps of `stepMm`; 255 nowhere. */
  paper: Uint8Array<ArrayBuffer>;
  overprint: Uint8Array<ArrayBuffer>;
  stepMm: number;
}

/** Longest side of the map, px. */
const MOST_SIDE = 1600;
const STEP_MM = 0.02;

/** A map of the least slack at every place; of places that fall on one pixel the least counts. */
export function drawSlack(faults: readonly PlateFaults[], { width, height }: Plane, ppi: number): SlackMap {
  const scale = Math.max(1, Math.ceil(Math.max(width, height) / MOST_SIDE));
  const size = [Math.ceil(width / scale), Math.ceil(height / scale)] as const;
  const map = {
    paper: new Uint8Array(size[0] * size[1]).fill(255),
    overprint: new Uint8Array(size[0] * size[1]).fill(255),
  };
  for (const { points, shown } of faults)
    for (let k = 0; k < points.at.length; k++) {
      const fault = shown[points.group[k]!];
      if (!fault) continue;
      const [dx, dy] = offsetOf(points.offset[k]!);
      const slackMm = pxToMm(Math.sqrt(dx * dx + dy * dy) - 1, ppi);
      const at = points.at[k]!;
      const x = Math.floor((at % width) / scale);
      const y = Math.floor(at / width / scale);
      const plane = fault.paper ? map.paper : map.overprint;
      const step = Math.min(254, Math.round(slackMm / STEP_MM));
      if (step < plane[y * size[0] + x]!) plane[y * size[0] + x] = step;
    }
  return {
    width: size[0],
    height: size[1],
    mm: [pxToMm(width, ppi), pxToMm(height, ppi)],
    stepMm: STEP_MM,
    ...map,
  };
}
