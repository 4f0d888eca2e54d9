import { LATTICE, mix, octavesOf, textureRow } from './lattice.ts';
import type { Plane } from './plane.ts';

export interface PaperTextureArgs {
  out: Plane;
  lattice: Int8Array;
  pixelMm: number;
  /** Width of the bumps, mm. */
  toothMm: number;
  /** 0..1 */
  tooth: number;
  /** 0..1 */
  fibres: number;
  seed: number;
}

/** Lightness that the sheet adds or takes, as bytes around 128: tooth and fibres, for rows `from..to`. */
export function paperTexture(args: PaperTextureArgs, from: number, to: number): void {
  const { out, lattice, pixelMm, seed } = args;
  const octaves = octavesOf(args.toothMm * 2, 3, seed, pixelMm);
  const row = new Float32Array(out.width);
  const band = new Float32Array(out.width * (to - from));
  if (fibresShow(args)) drawFibres(band, args, from, to);
  for (let y = from; y < to; y++) {
    textureRow(lattice, octaves, y, pixelMm, row);
    for (let x = 0; x < out.width; x++) {
      const fibre = band[(y - from) * out.width + x]!;
      const value = 128 + row[x]! * args.tooth * 90 + fibre * args.fibres * FIBRE_STEPS;
      out.data[y * out.width + x] = Math.min(255, Math.max(0, value + 0.5));
    }
  }
}

/** Steps of lightness that the full strength of a fibre makes. */
const FIBRE_STEPS = 60;

/** On coarse pixels a fibre covers so little of each that it would not move the lightness by three steps. */
function fibresShow({ fibres, pixelMm }: PaperTextureArgs): boolean {
  return fibres * FIBRE_STEPS * Math.min(1, WIDEST_MM / pixelMm) >= 3;
}

/** Fibres of paper: 2-4 mm long, 20-50 um wide (common practice, no source), a few to a square of 4 mm. */
const CELL_MM = 4;
const NARROWEST_MM = 0.02;
const WIDEST_MM = 0.05;
const FIBRES_A_CELL = 5;
const PIECES = 10;

/** Adds every fibre that crosses the band; each is a chain of straight pieces that bends a little at every joint. */
function drawFibres(band: Float32Array, args: PaperTextureArgs, from: number, to: number): void {
  const { pixelMm } = args;
  const { width } = args.out;
  const firstRow = Math.floor((from * pixelMm) / CELL_MM) - 1;
  const lastRow = Math.floor((to * pixelMm) / CELL_MM) + 1;
  const lastColumn = Math.floor((width * pixelMm) / CELL_MM) + 1;
  for (let row = firstRow; row <= lastRow; row++)
    for (let column = -1; column <= lastColumn; column++)
      for (let k = 0; k < FIBRES_A_CELL; k++) {
        const id = mix((row + LATTICE) * 65536 + (column + LATTICE) * 8 + k, args.seed);
        drawFibre(band, args, from, to, id, column, row);
      }
}

function drawFibre(
  band: Float32Array,
  args: PaperTextureArgs,
  from: number,
  to: number,
  id: number,
  column: number,
  row: number,
): void {
  const { pixelMm } = args;
  const chance = (n: number) => mix(n, id) / 0x100000000;
  let x = ((column + chance(0)) * CELL_MM) / pixelMm;
  let y = ((row + chance(1)) * CELL_MM) / pixelMm;
  const lengthPx = (2 + 2 * chance(2)) / pixelMm;
  const widthPx = (NARROWEST_MM + (WIDEST_MM - NARROWEST_MM) * chance(3)) / pixelMm;
  const radius = Math.max(0.5, widthPx / 2);
  const ink = (chance(4) < 0.5 ? -1 : 1) * Math.min(1, widthPx);
  let dx = chance(5) - 0.5;
  let dy = chance(6) - 0.5;
  let bend = (chance(7) - 0.5) * 0.35;
  for (let piece = 0; piece < PIECES; piece++) {
    const norm = Math.sqrt(dx * dx + dy * dy) || 1;
    const nextX = x + ((dx / norm) * lengthPx) / PIECES;
    const nextY = y + ((dy / norm) * lengthPx) / PIECES;
    drawPiece(band, args.out.width, from, to, x, y, nextX, nextY, radius, ink);
    x = nextX;
    y = nextY;
    [dx, dy] = [dx / norm - (dy / norm) * bend, dy / norm + (dx / norm) * bend];
    bend += (chance(8 + piece) - 0.5) * 0.25;
  }
}

/** Adds one straight piece with soft sides; a pixel keeps the strongest fibre that covers it, dark before light. */
function drawPiece(
  band: Float32Array,
  width: number,
  from: number,
  to: number,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  radius: number,
  ink: number,
): void {
  const reach = radius + 1;
  const top = Math.max(from, Math.floor(Math.min(y0, y1) - reach));
  const bottom = Math.min(to, Math.ceil(Math.max(y0, y1) + reach));
  const left = Math.max(0, Math.floor(Math.min(x0, x1) - reach));
  const right = Math.min(width, Math.ceil(Math.max(x0, x1) + reach));
  const dx = x1 - x0;
  const dy = y1 - y0;
  const length2 = dx * dx + dy * dy || 1;
  for (let y = top; y < bottom; y++)
    for (let x = left; x < right; x++) {
      const t = Math.min(1, Math.max(0, ((x + 0.5 - x0) * dx + (y + 0.5 - y0) * dy) / length2));
      const ex = x + 0.5 - x0 - t * dx;
      const ey = y + 0.5 - y0 - t * dy;
      const cover = Math.min(1, radius + 0.5 - Math.sqrt(ex * ex + ey * ey)) * ink;
      if (cover * ink <= 0) continue;
      const at = (y - from) * width + x;
      if (Math.abs(cover) > Math.abs(band[at]!) || (cover < 0 && cover === -band[at]!)) band[at] = cover;
    }
}
