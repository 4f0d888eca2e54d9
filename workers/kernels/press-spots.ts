import { mix } from './lattice.ts';
import type { Plane } from './plane.ts';

/** A round mark with an uneven rim on a plate, mm from the upper left corner. */
export interface Spot {
  x: number;
  y: number;
  radius: number;
  /** Ink where there is none, bare where there is ink, or ink in a bare ring. */
  as: 'speck' | 'void' | 'hickey';
  /** Shapes its rim. */
  seed: number;
}

/** Farthest that a rim departs from its circle, of the radius. */
const UNEVEN = 0.35;
/** The dot in a hickey, of its halo. */
const CORE = 0.4;
/** What the halo of a hickey leaves of the ink. */
const HALO = 0.15;

/** Draws the part of a spot that lies in rows `from..to`. A spot smaller than a pixel counts by its area. */
export function drawSpot(spot: Spot, out: Plane, pixelMm: number, from: number, to: number): void {
  const radius = spot.radius / pixelMm;
  const reach = radius * (1 + UNEVEN) + 1;
  const [x0, y0] = [spot.x / pixelMm - 0.5, spot.y / pixelMm - 0.5];
  const lobes = [1, 2, 3].map((n) => (mix(n, spot.seed) / 0x100000000 - 0.5) * 2 * UNEVEN);
  for (let y = Math.max(from, Math.ceil(y0 - reach)); y < Math.min(to, y0 + reach); y++)
    for (let x = Math.max(0, Math.ceil(x0 - reach)); x < Math.min(out.width, x0 + reach); x++) {
      const [dx, dy] = [x - x0, y - y0];
      const away = Math.sqrt(dx * dx + dy * dy);
      const rim = radius * rimAt(dx, dy, away, lobes);
      const i = y * out.width + x;
      const value = out.data[i]!;
      if (spot.as === 'speck') out.data[i] = value + (255 - value) * cover(rim, away) + 0.5;
      else if (spot.as === 'void') out.data[i] = value * (1 - cover(rim, away)) + 0.5;
      else out.data[i] = hickeyAt(value, rim, away) + 0.5;
    }
}

/** About 1: directions `dx, dy` give twofold and threefold lobes without any angle. */
function rimAt(dx: number, dy: number, away: number, [a, b, c]: readonly number[]): number {
  if (away === 0) return 1;
  const [u, v] = [dx / away, dy / away];
  return 1 + (a! * (u * u - v * v) + b! * 2 * u * v + c! * u * (u * u - 3 * v * v)) / 2;
}

function cover(rim: number, away: number): number {
  const edge = Math.min(1, Math.max(0, rim + 0.5 - away));
  return rim >= 0.5 ? edge : edge * 4 * rim * rim;
}

function hickeyAt(value: number, rim: number, away: number): number {
  const halo = value * (1 - cover(rim, away) * (1 - HALO));
  return halo + (value - halo) * cover(rim * CORE, away);
}
