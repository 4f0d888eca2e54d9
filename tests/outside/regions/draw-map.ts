import type { Plane } from '../../../workers/kernels/plane.ts';
import { flatPlane } from '../../unit/support/pictures.ts';

export type Point = readonly [number, number];

/** Lines one pixel wide along every path, without soft edges: each step goes to one of the 8 pixels around (Bresenham). */
export function drawLines(width: number, height: number, paths: readonly (readonly Point[])[]): Plane {
  const plane = flatPlane(width, height);
  for (const path of paths) for (let k = 1; k < path.length; k++) drawLine(plane, path[k - 1]!, path[k]!);
  return plane;
}

function drawLine({ width, height, data }: Plane, from: Point, to: Point): void {
  let [x, y] = from.map(Math.floor) as [number, number];
  const [endX, endY] = to.map(Math.floor) as [number, number];
  const [dx, dy] = [Math.abs(endX - x), -Math.abs(endY - y)];
  const [stepX, stepY] = [x < endX ? 1 : -1, y < endY ? 1 : -1];
  for (let error = dx + dy; ; ) {
    if (x >= 0 && y >= 0 && x < width && y < height) data[y * width + x] = 255;
    if (x === endX && y === endY) return;
    const twice = 2 * error;
    if (twice >= dy) {
      error += dy;
      x += stepX;
    }
    if (twice <= dx) {
      error += dx;
      y += stepY;
    }
  }
}

/** Whether a place lies within rings, by the even-odd rule along the row to its left. */
export function isWithin(rings: readonly (readonly Point[])[], [x, y]: Point): boolean {
  let crossings = 0;
  for (const ring of rings)
    for (let k = 0; k < ring.length; k++) {
      const [[ax, ay], [bx, by]] = [ring[k]!, ring[(k + 1) % ring.length]!];
      if (ay > y !== by > y && x > ax + ((y - ay) * (bx - ax)) / (by - ay)) crossings++;
    }
  return crossings % 2 === 1;
}

/** What a ring encloses, px2. */
export function areaOf(ring: readonly Point[]): number {
  const sum = ring.reduce((total, [x, y], k) => {
    const [u, v] = ring[(k + 1) % ring.length]!;
    return total + x * v - u * y;
  }, 0);
  return Math.abs(sum / 2);
}
