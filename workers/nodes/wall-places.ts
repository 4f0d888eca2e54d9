import type { Complaint } from '../../src/graph/complaint.ts';
import type { BarrierValue } from '../engine/values.ts';
import { compact } from '../kernels/join-rooms.ts';
import { type LabelPlane, mmToPx, pxToMm } from '../kernels/plane.ts';
import { unionOf, unite } from '../kernels/union.ts';

/** How far from a wall the hand that opened it may have been, mm. */
const REACH_MM = 1.5;

/** Index of the wall nearest to a place; null where none is within reach. */
export function openingAt(
  { walls, filled }: BarrierValue,
  placeMm: readonly [number, number],
  ppi: number,
): number | null {
  const { width } = filled;
  const [x, y] = placeMm.map((mm) => mmToPx(mm, ppi)) as [number, number];
  let best = mmToPx(REACH_MM, ppi) ** 2;
  let nearest: number | null = null;
  for (let k = 0; k < walls.width.length; k++) {
    const [a, b] = [walls.endA[k]!, walls.endB[k]!].map((at) => [
      (at % width) + 0.5 - x,
      Math.floor(at / width) + 0.5 - y,
    ]) as [[number, number], [number, number]];
    const d2 = toSegment(a, b);
    if (d2 > best) continue;
    best = d2;
    nearest = k;
  }
  return nearest;
}

/** Squared distance of the origin to a stretch. */
function toSegment(a: readonly [number, number], b: readonly [number, number]): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length2 = dx * dx + dy * dy;
  const along = length2 === 0 ? 0 : Math.min(1, Math.max(0, -(a[0] * dx + a[1] * dy) / length2));
  const [u, v] = [a[0] + along * dx, a[1] + along * dy];
  return u * u + v * v;
}

/** The pixel under a place; -1 outside the picture. */
export function pixelAt(plane: LabelPlane, placeMm: readonly [number, number], ppi: number): number {
  const [x, y] = placeMm.map((mm) => Math.floor(mmToPx(mm, ppi))) as [number, number];
  return x < 0 || y < 0 || x >= plane.width || y >= plane.height ? -1 : y * plane.width + x;
}

/** So many walls to every area that line alone closes are a sign that the gap takes shapes for openings. */
const MANY = 3;
const A_FEW = 20;

/** A warning where the gap is larger than the drawing's own features; null where it is not. */
export function wallsComplaint({ walls, rooms }: BarrierValue, gapMm: number, ppi: number): Complaint | null {
  const areas = areasOf(rooms.saddles, rooms.count);
  const count = walls.width.length;
  if (count <= MANY * areas + A_FEW) return null;
  const widths = [...walls.width].sort((a, b) => a - b);
  const sensible = Math.floor(pxToMm(widths[areas + A_FEW]!, ppi) * 20) / 20;
  const advice = sensible > 0 ? `Try ${sensible} mm or less.` : 'Set it to 0, or take specks away first.';
  return {
    code: 'gap-too-wide',
    severity: 'warning',
    message: `A gap of ${gapMm} mm puts ${count} walls into ${areas} closed areas: it takes narrow parts of the drawing for openings. ${advice}`,
    measure: count,
  };
}

/** How many areas line alone parts: rooms with a wall between are one. */
function areasOf(saddles: BarrierValue['rooms']['saddles'], rooms: number): number {
  const home = unionOf(rooms + 1);
  saddles.a.forEach((a, k) => {
    unite(home, a, saddles.b[k]!);
  });
  return compact(home).count;
}
