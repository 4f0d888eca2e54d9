import { FAR } from './distance.ts';
import type { Plane } from './plane.ts';

export interface HeavierArgs {
  line: Plane;
  /** Distance to the nearest pixel with any line in its column, from `columnDistance`; far beyond the radius. */
  columns: Uint16Array;
  /** How far the edge moves outward, px, above 0. */
  radius: number;
  /** Reads and writes the plane upside down (255 - value): the line gets finer instead. */
  inverted: boolean;
  out: Plane;
}

/**
 * Moves the edges of a line outward by a part of a pixel or more, its soft edge kept: grey dilation by a disc with
 * a soft rim, for rows `from..to`. Structuring functions: Serra, "Image Analysis and Mathematical Morphology", 1982.
 */
export function heavier(args: HeavierArgs, from: number, to: number): void {
  const { columns, radius } = args;
  const { width, height, data } = args.line;
  const out = args.out.data;
  const flip = args.inverted ? 255 : 0;
  const disc = softDisc(radius);
  const reach = Math.ceil(radius);
  for (let y = from; y < to; y++) {
    const row = y * width;
    let near = 0;
    for (let x = 0; x < Math.min(reach, width); x++) if (columns[row + x] !== FAR) near++;
    for (let x = 0; x < width; x++) {
      if (x + reach < width && columns[row + x + reach] !== FAR) near++;
      if (x - reach - 1 >= 0 && columns[row + x - reach - 1] !== FAR) near--;
      let best = data[row + x]! ^ flip;
      for (let k = 0; near > 0 && k < disc.length && best < disc[k]!.weight; k++) {
        const { dx, dy, weight } = disc[k]!;
        const px = x + dx;
        const py = y + dy;
        if (px < 0 || px >= width || py < 0 || py >= height) continue;
        const value = Math.min(weight, data[py * width + px]! ^ flip);
        if (value > best) best = value;
      }
      out[row + x] = best ^ flip;
    }
  }
}

interface Step {
  dx: number;
  dy: number;
  weight: number;
}

/** Steps of a disc, the fullest first: weight 255 within the radius, falling to 0 over one pixel beyond it. */
function softDisc(radius: number): Step[] {
  const reach = Math.ceil(radius);
  const steps: Step[] = [];
  for (let dy = -reach; dy <= reach; dy++)
    for (let dx = -reach; dx <= reach; dx++) {
      const rest = radius + 1 - Math.sqrt(dx * dx + dy * dy);
      const weight = Math.round(255 * Math.min(1, Math.max(0, rest)));
      if (weight > 0 && (dx !== 0 || dy !== 0)) steps.push({ dx, dy, weight });
    }
  return steps.sort((a, b) => b.weight - a.weight);
}
