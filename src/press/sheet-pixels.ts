import { pressSheet } from '../nodes/press-sheet.ts';
import type { Labels } from './name-rows.ts';
import { type BoxMm, grown, type SheetPlan, type SheetSettings, sheetPlan } from './sheet.ts';

const MM_PER_INCH = 25.4;

/** left, top, right, bottom in whole pixels; right and bottom are the first outside. */
export type PixelBox = readonly [number, number, number, number];

/** A press sheet in whole pixels of the plates on it. */
export interface SheetPixels {
  ppi: number;
  width: number;
  height: number;
  /** Where the upper left corner of the plates lies. */
  art: readonly [number, number];
  trim: PixelBox;
  bleed: PixelBox;
  /** The sheet with its boxes moved to these pixels, for marks that meet them. */
  plan: SheetPlan;
}

/** A sheet that is no larger than the plates, with nothing on it. */
export const BARE_SHEET: SheetSettings = pressSheet.settings.parse({
  cropMarks: false,
  registerMarks: false,
  plateNames: false,
  colourBar: false,
});

/** The plates as they lie on a sheet. */
export interface PlatesOnSheet {
  width: number;
  height: number;
  ppi: number;
  artAt: 'trim' | 'bleed';
  labels: Labels;
}

/** Lays plates out on their sheet, everything on whole pixels, so that no plate moves against another. */
export function sheetPixels(settings: SheetSettings, plates: PlatesOnSheet): SheetPixels {
  const { width, height, ppi, artAt, labels } = plates;
  const px = (mm: number) => Math.round((mm * ppi) / MM_PER_INCH);
  const mm = (pixels: number) => (pixels * MM_PER_INCH) / ppi;
  const plan = sheetPlan(settings, [mm(width), mm(height)], artAt, labels);
  const bleedPx = px(settings.bleedMm);
  const inset = artAt === 'bleed' ? bleedPx : 0;
  const art = [px(plan.trim[0]) - inset, px(plan.trim[1]) - inset] as const;
  const trim: PixelBox = [art[0] + inset, art[1] + inset, art[0] + width - inset, art[1] + height - inset];
  const bleed = [trim[0] - bleedPx, trim[1] - bleedPx, trim[2] + bleedPx, trim[3] + bleedPx] as const;
  const size =
    settings.size === 'fit' ? fitting(trim, plan, px) : ([px(plan.mm[0]), px(plan.mm[1])] as const);
  const trimMm = trim.map(mm) as unknown as BoxMm;
  const snapped: SheetPlan = {
    ...plan,
    mm: [mm(size[0]), mm(size[1])],
    trim: trimMm,
    bleed: grown(trimMm, settings.bleedMm),
  };
  return { ppi, width: size[0], height: size[1], art, trim, bleed, plan: snapped };
}

/** A sheet that fits ends as far beyond the trim as it was planned to. */
function fitting(trim: PixelBox, { trim: planned, mm }: SheetPlan, px: (mm: number) => number) {
  return [trim[2] + px(mm[0] - planned[2]), trim[3] + px(mm[1] - planned[3])] as const;
}
