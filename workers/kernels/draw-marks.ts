import type { Plane } from './plane.ts';

/** A straight stroke with square ends cut off at its points, or a flat box; all in pixels. */
export type MarkPiece =
  | { shape: 'stroke'; from: readonly [number, number]; to: readonly [number, number]; width: number }
  | { shape: 'box'; box: readonly [number, number, number, number]; value: number };

export interface DrawMarksArgs {
  plane: Plane;
  pieces: readonly MarkPiece[];
}

/**
 * Draws marks over rows `from..to` of a plane: the coverage of a pixel is how far the mark reaches over its middle,
 * softened over one pixel; what is darker already stays.
 */
export function drawMarks(args: DrawMarksArgs, from: number, to: number): void {
  for (const piece of args.pieces) {
    if (piece.shape === 'box') drawBox(args.plane, piece, from, to);
    else drawStroke(args.plane, piece, from, to);
  }
}

type Stroke = Extract<MarkPiece, { shape: 'stroke' }>;
type Box = Extract<MarkPiece, { shape: 'box' }>;

function drawBox({ width, data }: Plane, { box, value }: Box, from: number, to: number): void {
  const [left, top, right, bottom] = box.map(Math.round) as [number, number, number, number];
  for (let y = Math.max(from, top); y < Math.min(to, bottom); y++)
    for (let x = Math.max(0, left); x < Math.min(width, right); x++) darken(data, y * width + x, value);
}

function drawStroke({ width, data }: Plane, stroke: Stroke, from: number, to: number): void {
  const [ax, ay] = stroke.from;
  const [bx, by] = stroke.to;
  const half = Math.max(stroke.width, 1) / 2;
  const reach = half + 1;
  const top = Math.max(from, Math.floor(Math.min(ay, by) - reach));
  const bottom = Math.min(to, Math.ceil(Math.max(ay, by) + reach));
  const left = Math.max(0, Math.floor(Math.min(ax, bx) - reach));
  const right = Math.min(width, Math.ceil(Math.max(ax, bx) + reach));
  const dx = bx - ax;
  const dy = by - ay;
  const length2 = dx * dx + dy * dy;
  for (let y = top; y < bottom; y++) {
    for (let x = left; x < right; x++) {
      const px = x + 0.5 - ax;
      const py = y + 0.5 - ay;
      const along = length2 === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / length2));
      const ox = px - along * dx;
      const oy = py - along * dy;
      const cover = Math.min(1, half + 0.5 - Math.sqrt(ox * ox + oy * oy));
      if (cover > 0) darken(data, y * width + x, Math.round(cover * 255));
    }
  }
}

function darken(data: Uint8Array, at: number, value: number): void {
  if (value > data[at]!) data[at] = value;
}
