import type { Plane } from './plane.ts';

export interface PlaceArgs {
  from: Plane;
  to: Plane;
  /** Where the upper left corner of `from` lies on `to`; negative crops it. */
  at: readonly [number, number];
  /** Only inside this box of `to` (left, top, right, bottom; the last two outside) is anything printed. */
  box: readonly [number, number, number, number];
  /** What prints in the box beside `from`: nothing, or its nearest pixel. */
  beyond: 'paper' | 'edge';
}

/** Lays a plate on a larger or smaller sheet, rows `from..to` of the sheet; outside of the box all is paper. */
export function place(args: PlaceArgs, from: number, to: number): void {
  const { at, box, beyond } = args;
  const { width, height, data } = args.from;
  const { width: sheetWidth, data: sheet } = args.to;
  const left = Math.max(0, box[0]);
  const right = Math.min(sheetWidth, box[2]);
  const inLeft = Math.min(right, Math.max(left, at[0]));
  const inRight = Math.max(inLeft, Math.min(right, at[0] + width));
  for (let y = from; y < to; y++) {
    const row = y * sheetWidth;
    sheet.fill(0, row, row + sheetWidth);
    if (y < box[1] || y >= box[3]) continue;
    const inside = y >= at[1] && y < at[1] + height;
    if (!inside && beyond === 'paper') continue;
    const source = Math.min(height - 1, Math.max(0, y - at[1])) * width;
    sheet.set(data.subarray(source + inLeft - at[0], source + inRight - at[0]), row + inLeft);
    if (beyond === 'paper') continue;
    if (inLeft > left) sheet.fill(data[source]!, row + left, row + inLeft);
    if (inRight < right) sheet.fill(data[source + width - 1]!, row + inRight, row + right);
  }
}
