import type { Point } from './path.ts';
import type { LabelPlane, Plane } from './plane.ts';

export interface AreaMaskArgs {
  out: Plane;
  /** Outlines, px from pixel corners, closed from the last corner to the first. */
  shapes: readonly (readonly Point[])[];
  /** Whole regions: 1 by label where it belongs to the area; null without regions. */
  regions: { labels: LabelPlane; members: Uint8Array } | null;
  /** Line near paths; null without line. */
  line: { plane: Plane; near: readonly { path: readonly Point[]; radius: number }[] } | null;
}

/** Coverage from which a pixel is line. */
const LINE = 128;

/** 255 for pixels of an area, 0 for others, for rows `from..to`. A pixel is in a shape when its middle is. */
export function areaMask(args: AreaMaskArgs, from: number, to: number): void {
  const { width, data } = args.out;
  data.fill(0, from * width, to * width);
  for (const shape of args.shapes) fillShape(shape, width, data, from, to);
  if (args.regions) {
    const { labels, members } = args.regions;
    for (let i = from * width; i < to * width; i++) if (members[labels.data[i]!] === 1) data[i] = 255;
  }
  if (args.line)
    for (const { path, radius } of args.line.near)
      markNear(args.line.plane, path, radius, args.out, from, to);
}

/** Even-odd filling row by row: pixels between every other crossing of the outline with the middle of the row. */
function fillShape(shape: readonly Point[], width: number, data: Uint8Array, from: number, to: number): void {
  const crossings: number[] = [];
  for (let y = from; y < to; y++) {
    const middle = y + 0.5;
    crossings.length = 0;
    shape.forEach(([x1, y1], k) => {
      const [x2, y2] = shape[(k + 1) % shape.length]!;
      if (y1 <= middle === y2 <= middle) return;
      crossings.push(x1 + ((middle - y1) * (x2 - x1)) / (y2 - y1));
    });
    crossings.sort((a, b) => a - b);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const left = Math.max(0, Math.ceil(crossings[k]! - 0.5));
      const right = Math.min(width, Math.ceil(crossings[k + 1]! - 0.5));
      if (left < right) data.fill(255, y * width + left, y * width + right);
    }
  }
}

function markNear(
  line: Plane,
  path: readonly Point[],
  radius: number,
  out: Plane,
  from: number,
  to: number,
): void {
  const { width } = out;
  for (let k = 0; k < path.length; k++) {
    const [ax, ay] = path[k]!;
    const [bx, by] = path[Math.min(k + 1, path.length - 1)]!;
    const top = Math.max(from, Math.floor(Math.min(ay, by) - radius));
    const bottom = Math.min(to, Math.ceil(Math.max(ay, by) + radius));
    const left = Math.max(0, Math.floor(Math.min(ax, bx) - radius));
    const right = Math.min(width, Math.ceil(Math.max(ax, bx) + radius));
    for (let y = top; y < bottom; y++)
      for (let x = left; x < right; x++) {
        const i = y * width + x;
        if (line.data[i]! < LINE) continue;
        if (squaredToSegment(x + 0.5, y + 0.5, ax, ay, bx, by) <= radius * radius) out.data[i] = 255;
      }
  }
}

/** Squared distance of a point from a segment. */
export function squaredToSegment(
  x: number,
  y: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): number {
  const [dx, dy] = [bx - ax, by - ay];
  const long = dx * dx + dy * dy;
  const share = long === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / long));
  const [ex, ey] = [x - ax - share * dx, y - ay - share * dy];
  return ex * ex + ey * ey;
}
