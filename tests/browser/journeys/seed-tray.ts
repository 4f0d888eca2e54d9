const COLUMNS = 4;
const ROWS = 3;

/** A tray of twelve closed cells on 101.6 x 81.28 mm, which is 2400 x 1920 px at 600 ppi; its size is in the file. */
export const SEED_TRAY = `<svg xmlns="http://www.w3.org/2000/svg" width="101.6mm" height="81.28mm" viewBox="0 0 100 80">
  <g fill="none" stroke="#000" stroke-width="0.6">${cells()
    .map(({ x, y }) => `<rect x="${x}" y="${y}" width="18" height="18" rx="3"/>`)
    .join('')}</g>
</svg>`;

/** The same without a size that means anything. */
export const SIZELESS_TRAY = SEED_TRAY.replace(
  'width="101.6mm" height="81.28mm"',
  'width="1000" height="800"',
);

function cells(): { x: number; y: number }[] {
  return Array.from({ length: COLUMNS * ROWS }, (_, i) => ({
    x: 6 + (i % COLUMNS) * 23,
    y: 8 + Math.floor(i / COLUMNS) * 23,
  }));
}

/** Middles of the cells in shares of the sheet. */
export function cellMiddles(): { across: number; down: number }[] {
  return cells().map(({ x, y }) => ({ across: (x + 9) / 100, down: (y + 9) / 80 }));
}
