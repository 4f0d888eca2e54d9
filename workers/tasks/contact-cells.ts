import { CELL as LETTER, strokesOf } from '../../src/ink/form/letters.ts';

/** A small print on a contact sheet. */
export interface SheetCell {
  title: string;
  width: number;
  height: number;
  /** `width * height * 3` bytes, sRGB. */
  pixels: Uint8Array;
}

/** Where the cells of a contact sheet lie, px. */
export interface ContactLayout {
  width: number;
  height: number;
  /** Upper left corner of each print. */
  places: readonly (readonly [number, number])[];
}

const MARGIN = 60;
const GAP = 50;
const TITLE = { height: 22, below: 18, stroke: 1.6 } as const;
const PAPER = [250, 248, 243] as const;
const INK = [35, 33, 30] as const;

/** A layout as near to a square as it comes. */
export function sheetOf(cells: readonly SheetCell[], cell: number): ContactLayout {
  const widest = Math.min(cell, Math.max(...cells.map(({ width }) => width)));
  const highest = Math.min(cell, Math.max(...cells.map(({ height }) => height)));
  const row = highest + TITLE.below + TITLE.height + GAP;
  const columns = Math.max(
    1,
    Math.min(cells.length, Math.round(Math.sqrt((cells.length * row) / (widest + GAP)))),
  );
  const rows = Math.ceil(cells.length / columns);
  const places = cells.map(
    ({ width, height }, i) =>
      [
        MARGIN + (i % columns) * (widest + GAP) + Math.floor((widest - width) / 2),
        MARGIN + Math.floor(i / columns) * row + (highest - height),
      ] as const,
  );
  return {
    width: 2 * MARGIN + columns * (widest + GAP) - GAP,
    height: 2 * MARGIN + rows * row - GAP,
    places,
  };
}

/** Paints the prints with their titles on a sheet of `width * height * 3` bytes. */
export function layCells(cells: readonly SheetCell[], sheet: ContactLayout, data: Uint8Array): void {
  fillPaper(sheet, data);
  cells.forEach((cell, i) => {
    const [left, top] = sheet.places[i]!;
    for (let row = 0; row < cell.height; row++) {
      const from = row * cell.width * 3;
      data.set(cell.pixels.subarray(from, from + cell.width * 3), ((top + row) * sheet.width + left) * 3);
    }
    writeTitle(cell.title, left, top + cell.height + TITLE.below, TITLE.height, sheet, data);
  });
}

/** What prints are laid on. */
type Ground = Pick<ContactLayout, 'width' | 'height'>;

/** Makes a sheet of `width * height * 3` bytes bare. */
export function fillPaper(sheet: Ground, data: Uint8Array): void {
  for (let i = 0; i < sheet.width * sheet.height; i++) data.set(PAPER, i * 3);
}

/** Writes a title in strokes, `height` px high; a letter without strokes leaves a space. */
export function writeTitle(
  title: string,
  left: number,
  top: number,
  height: number,
  sheet: Ground,
  data: Uint8Array,
): void {
  const unit = height / LETTER.height;
  const pen = (TITLE.stroke * height) / TITLE.height;
  [...title].forEach((letter, i) => {
    for (const run of strokesOf(letter))
      for (let k = 1; k < run.length; k++) {
        const [from, to] = [run[k - 1]!, run[k]!].map(
          ([x, y]) => [left + (i * LETTER.advance + x) * unit, top + y * unit] as const,
        ) as [readonly [number, number], readonly [number, number]];
        stroke(from, to, pen, sheet, data);
      }
  });
}

function stroke(
  [x1, y1]: readonly [number, number],
  [x2, y2]: readonly [number, number],
  pen: number,
  { width, height }: Ground,
  data: Uint8Array,
): void {
  const steps = Math.ceil(2 * Math.max(Math.abs(x2 - x1), Math.abs(y2 - y1))) + 1;
  for (let step = 0; step <= steps; step++) {
    const x = x1 + ((x2 - x1) * step) / steps;
    const y = y1 + ((y2 - y1) * step) / steps;
    for (let row = Math.floor(y - pen); row <= y + pen; row++)
      for (let column = Math.floor(x - pen); column <= x + pen; column++) {
        const [dx, dy] = [column + 0.5 - x, row + 0.5 - y];
        const inside = row >= 0 && row < height && column >= 0 && column < width;
        if (inside && dx * dx + dy * dy <= pen * pen) data.set(INK, (row * width + column) * 3);
      }
  }
}
