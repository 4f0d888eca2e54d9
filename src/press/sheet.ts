import type { z } from 'zod';
import type { pressSheet } from '../nodes/press-sheet.ts';
import { type Labels, nameRows } from './name-rows.ts';

export type SheetSettings = z.output<typeof pressSheet.settings>;

/** left, top, right, bottom in mm from the sheet's top left corner. */
export type BoxMm = readonly [number, number, number, number];

/** Where everything stands on a press sheet. */
export interface SheetPlan {
  /** Size of the sheet. */
  mm: readonly [number, number];
  /** What is cut out. */
  trim: BoxMm;
  /** What is printed beyond it. */
  bleed: BoxMm;
  /** How far crop and register marks stand off the trim. */
  markOffsetMm: number;
  /** Bare sheet around the bleed that marks need, left, top, right and bottom. */
  slug: BoxMm;
  /** What does not go on it, as sentences. */
  troubles: readonly string[];
}

/** Common sheets, mm, upright: ISO 216 A sizes, ISO 217 for the oversize ones. */
export const SHEET_SIZES = {
  a5: [148, 210],
  a4: [210, 297],
  a3: [297, 420],
  a2: [420, 594],
  ra3: [305, 430],
  sra3: [320, 450],
} as const satisfies Record<string, readonly [number, number]>;

/** Crop marks stand this far off the trim where there is no bleed to clear (common practice, no source). */
const LEAST_OFFSET_MM = 2;
export const CROP_LENGTH_MM = 5;
export const REGISTER_SIZE_MM = 6;
export const FOOT_ROW_MM = 5;

/**
 * Places the trim of a picture on a press sheet, in mm.
 *
 * @param artMm size of the plates
 * @param artAt whether the plates end at the trim or at the bleed
 * @param labels what the margin says; one name for each plate
 */
export function sheetPlan(
  settings: SheetSettings,
  artMm: readonly [number, number],
  artAt: 'trim' | 'bleed',
  labels: Labels,
): SheetPlan {
  const { bleedMm } = settings;
  const inset = artAt === 'bleed' ? bleedMm : 0;
  const trimMm = [artMm[0] - 2 * inset, artMm[1] - 2 * inset] as const;
  const markOffsetMm = Math.max(LEAST_OFFSET_MM, bleedMm);
  const slug = slugOf(settings, markOffsetMm - bleedMm, trimMm[0], labels);
  const around = [
    trimMm[0] + 2 * bleedMm + slug[0] + slug[2],
    trimMm[1] + 2 * bleedMm + slug[1] + slug[3],
  ] as const;
  const mm = settings.size === 'fit' ? around : sheetMm(settings, around);
  const { rightMm, downMm } = settings.shift;
  const side = settings.side === 'back' ? -1 : 1;
  const left = (mm[0] - around[0]) / 2 + slug[0] + bleedMm + side * rightMm;
  const top = (mm[1] - around[1]) / 2 + slug[1] + bleedMm + downMm;
  const trim: BoxMm = [left, top, left + trimMm[0], top + trimMm[1]];
  const plan = { mm, trim, bleed: grown(trim, bleedMm), markOffsetMm, slug };
  return { ...plan, troubles: troublesOf(plan, trimMm) };
}

/** The box, larger by so much on all sides. */
export function grown([left, top, right, bottom]: BoxMm, by: number): BoxMm {
  return [left - by, top - by, right + by, bottom + by];
}

/** Patches and names that stand in one row at the foot. */
export function perFootRow(widthMm: number, itemMm: number): number {
  return Math.max(1, Math.floor(widthMm / itemMm));
}

function slugOf(settings: SheetSettings, beyondBleed: number, widthMm: number, labels: Labels): BoxMm {
  const { cropMarks, registerMarks, plateNames } = settings;
  const outside = cropMarks || registerMarks ? beyondBleed + Math.max(CROP_LENGTH_MM, REGISTER_SIZE_MM) : 0;
  const names = plateNames ? nameRows(labels, widthMm).length * FOOT_ROW_MM : 0;
  return [
    outside,
    outside + names,
    outside,
    outside + footRows(settings, widthMm, labels.names.length) * FOOT_ROW_MM,
  ];
}

/** Tints of the bar of a plate, and of its wedge, %. */
export const BAR_TINTS = [100, 50] as const;
export const WEDGE_TINTS = [5, 10, 20, 30, 50, 70, 80, 90, 95] as const;

/** How many rows of patches stand at the foot. */
export function footRows(settings: SheetSettings, widthMm: number, plates: number): number {
  const inRow = perFootRow(widthMm, FOOT_ROW_MM);
  const bar = settings.colourBar ? Math.ceil((plates * BAR_TINTS.length) / inRow) : 0;
  const wedge = settings.tintWedge ? Math.ceil((plates * WEDGE_TINTS.length) / inRow) : 0;
  return bar + wedge;
}

/** The chosen size, turned the way that holds what goes on it, else the way that lies like it. */
function sheetMm(settings: SheetSettings, wanted: readonly [number, number]): readonly [number, number] {
  const { widthMm, heightMm } = settings.own;
  const [w, h] =
    settings.size === 'own' ? [widthMm, heightMm] : SHEET_SIZES[settings.size as keyof typeof SHEET_SIZES];
  const fits = (a: number, b: number) => a >= wanted[0] && b >= wanted[1];
  if (fits(w, h) !== fits(h, w)) return fits(w, h) ? [w, h] : [h, w];
  return w <= h === wanted[0] <= wanted[1] ? [w, h] : [h, w];
}

function troublesOf({ mm, bleed, slug }: Omit<SheetPlan, 'troubles'>, trimMm: readonly [number, number]) {
  if (!(trimMm[0] > 0 && trimMm[1] > 0))
    return ['The bleed is larger than the drawing: nothing is left inside it. Make the bleed smaller.'];
  const size = (w: number, h: number) => `${w.toFixed(1)} x ${h.toFixed(1)} mm`;
  const off = ([left, top, right, bottom]: BoxMm) =>
    left < -1e-6 || top < -1e-6 || right > mm[0] + 1e-6 || bottom > mm[1] + 1e-6;
  if (off(bleed))
    return [
      `The sheet is ${size(...mm)} and what prints on it, with its bleed, ${size(bleed[2] - bleed[0], bleed[3] - bleed[1])}: part of it falls off the sheet. Choose a larger sheet or less shift.`,
    ];
  const marks: BoxMm = [bleed[0] - slug[0], bleed[1] - slug[1], bleed[2] + slug[2], bleed[3] + slug[3]];
  if (off(marks))
    return [
      `The marks do not fit on a sheet of ${size(...mm)}: with them ${size(marks[2] - marks[0], marks[3] - marks[1])} are needed. Marks that fall off are left out; choose a larger sheet or fewer marks.`,
    ];
  return [];
}
