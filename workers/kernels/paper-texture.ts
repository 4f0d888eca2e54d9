import { LATTICE, mix, octavesOf, textureRow } from './lattice.ts';
import type { Plane } from './plane.ts';
import { seenOf } from './seen.ts';

/** How the surface of a sheet varies. Strengths are 0..1, sizes mm. */
export interface PaperLook {
  tooth: number;
  /** Width of the bumps. */
  toothMm: number;
  fibres: number;
  /** Direction of the fibres, a unit vector. */
  fibresAlong: readonly [number, number];
  /** How far they may lie off it, 0 not at all .. 1 in all directions. */
  fibresSpread: number;
  flecks: number;
  flecksPerDm2: number;
  /** Length of the longest. */
  flecksMm: number;
  laid: number;
  /** From one laid line to the next. */
  laidMm: number;
  seed: number;
}

export interface PaperTextureArgs {
  out: Plane;
  /** From `latticeOf`. */
  lattice: Int8Array;
  pixelMm: number;
  look: PaperLook;
}

/** Lightness that the sheet adds or takes, as bytes around 128, for rows `from..to`. */
export function paperTexture(args: PaperTextureArgs, from: number, to: number): void {
  const { out, lattice, pixelMm, look } = args;
  const octaves = octavesOf(look.toothMm * 2, 3, look.seed, pixelMm);
  const laid = laidLines(look, pixelMm);
  const row = new Float32Array(out.width);
  const band = new Float32Array(out.width * (to - from));
  if (fibresShow(args)) drawFibres(band, args, from, to);
  if (look.flecks > 0) drawFlecks(band, args, from, to);
  for (let y = from; y < to; y++) {
    textureRow(lattice, octaves, y, pixelMm, row);
    const line = laid(y);
    for (let x = 0; x < out.width; x++) {
      const marks = band[(y - from) * out.width + x]!;
      const value = 128 + row[x]! * look.tooth * 90 + line + marks;
      out.data[y * out.width + x] = Math.min(255, Math.max(0, value + 0.5));
    }
  }
}

/** Steps of lightness that the full strength of each makes. */
const FIBRE_STEPS = 60;
const FLECK_STEPS = 110;
const LAID_STEPS = 40;

/** Laid lines run across the sheet: a smooth wave, faded out before it can alias. */
function laidLines({ laid, laidMm }: PaperLook, pixelMm: number): (y: number) => number {
  const steps = laid * LAID_STEPS * seenOf(laidMm / pixelMm);
  return (y) => {
    const at = ((y + 0.5) * pixelMm) / laidMm;
    const phase = Math.abs(2 * (at - Math.floor(at)) - 1);
    return steps * (phase * phase * (3 - 2 * phase) - 0.5);
  };
}

/** On coarse pixels a fibre covers so little of each that it would not move the lightness by three steps. */
function fibresShow({ look: { fibres }, pixelMm }: PaperTextureArgs): boolean {
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
  const { pixelMm, look } = args;
  const { width } = args.out;
  const firstRow = Math.floor((from * pixelMm) / CELL_MM) - 1;
  const lastRow = Math.floor((to * pixelMm) / CELL_MM) + 1;
  const lastColumn = Math.floor((width * pixelMm) / CELL_MM) + 1;
  for (let row = firstRow; row <= lastRow; row++)
    for (let column = -1; column <= lastColumn; column++)
      for (let k = 0; k < FIBRES_A_CELL; k++) {
        const id = mix((row + LATTICE) * 65536 + (column + LATTICE) * 8 + k, look.seed);
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
  const { pixelMm, look } = args;
  const chance = (n: number) => mix(n, id) / 0x100000000;
  let x = ((column + chance(0)) * CELL_MM) / pixelMm;
  let y = ((row + chance(1)) * CELL_MM) / pixelMm;
  const lengthPx = (2 + 2 * chance(2)) / pixelMm;
  const widthPx = (NARROWEST_MM + (WIDEST_MM - NARROWEST_MM) * chance(3)) / pixelMm;
  const radius = Math.max(0.5, widthPx / 2);
  const ink = (chance(4) < 0.5 ? -1 : 1) * Math.min(1, widthPx) * look.fibres * FIBRE_STEPS;
  let [dx, dy] = fibreDirection(look, chance(5) - 0.5, chance(6) - 0.5);
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

/** A direction drawn by two numbers -0.5..0.5: any at full spread, else squeezed towards the one that is set. */
function fibreDirection({ fibresAlong, fibresSpread }: PaperLook, u: number, v: number): [number, number] {
  if (fibresSpread >= 1) return [u, v];
  const [ax, ay] = fibresAlong;
  const aside = (v * fibresSpread * 2) / Math.max(0.05, 1 - fibresSpread);
  return [ax - ay * aside, ay + ax * aside];
}

const FLECK_CELL_MM = 10;

/** Adds every fleck that crosses the band: a short thick stroke, darker than the sheet. */
function drawFlecks(band: Float32Array, args: PaperTextureArgs, from: number, to: number): void {
  const { pixelMm, look } = args;
  const { width } = args.out;
  const aCell = look.flecksPerDm2 / 100;
  const lastColumn = Math.floor((width * pixelMm) / FLECK_CELL_MM) + 1;
  const lastRow = Math.floor((to * pixelMm) / FLECK_CELL_MM) + 1;
  for (let row = Math.floor((from * pixelMm) / FLECK_CELL_MM) - 1; row <= lastRow; row++)
    for (let column = -1; column <= lastColumn; column++) {
      const cell = mix((row + LATTICE) * 65536 + column + LATTICE, mix(9, look.seed));
      const count = Math.floor(aCell + mix(1, cell) / 0x100000000);
      for (let k = 0; k < count; k++) {
        const chance = (n: number) => mix(k * 8 + n, cell) / 0x100000000;
        const x = ((column + chance(2)) * FLECK_CELL_MM) / pixelMm;
        const y = ((row + chance(3)) * FLECK_CELL_MM) / pixelMm;
        const length = (look.flecksMm * (0.3 + 0.7 * chance(4) * chance(4))) / pixelMm;
        const thick = length * (0.15 + 0.35 * chance(5));
        const [dx, dy] = [chance(6) - 0.5, chance(7) - 0.5];
        const norm = Math.sqrt(dx * dx + dy * dy) || 1;
        const [endX, endY] = [x + (dx / norm) * length, y + (dy / norm) * length];
        const dark = -look.flecks * FLECK_STEPS * Math.min(1, thick) * (0.5 + 0.5 * chance(5));
        drawPiece(band, width, from, to, x, y, endX, endY, Math.max(0.5, thick / 2), dark);
      }
    }
}

/** Adds one straight piece with soft sides; a pixel keeps the strongest mark that covers it, dark before light. */
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
  strength: number,
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
      const cover = Math.min(1, radius + 0.5 - Math.sqrt(ex * ex + ey * ey)) * strength;
      if (cover * strength <= 0) continue;
      const at = (y - from) * width + x;
      if (Math.abs(cover) > Math.abs(band[at]!) || (cover < 0 && cover === -band[at]!)) band[at] = cover;
    }
}
