import { CELL, strokesOf } from '../ink/form/letters.ts';
import { type Labels, nameRows, TEXT_MM } from './name-rows.ts';
import {
  BAR_TINTS,
  CROP_LENGTH_MM,
  FOOT_ROW_MM,
  perFootRow,
  REGISTER_SIZE_MM,
  type SheetPlan,
  type SheetSettings,
  WEDGE_TINTS,
} from './sheet.ts';

type Place = readonly [number, number];

/** What is drawn on a press sheet around the picture; mm from its top left corner. */
export type Mark = {
  /** Index of the only plate that prints it; null for all. */
  plate: number | null;
} & (
  | { shape: 'line'; path: readonly Place[]; widthMm: number }
  | { shape: 'box'; box: readonly [number, number, number, number]; tintPercent: number }
);

/** A hairline of 0.25 pt, as marks use (common practice, no source). */
const HAIRLINE_MM = 0.09;
const TEXT_STROKE_MM = 0.2;
const RING_QUARTER = 12;

/**
 * The marks of a sheet, the same for every plate but for the patches and names that belong to one of them.
 *
 * @param labels in letters that `strokesOf` has; others leave a space
 */
export function sheetMarks(settings: SheetSettings, plan: SheetPlan, labels: Labels): Mark[] {
  const marks = [
    ...(settings.cropMarks ? cropMarks(plan) : []),
    ...(settings.registerMarks ? registerMarks(plan) : []),
    ...(settings.plateNames ? nameMarks(plan, labels) : []),
    ...footMarks(settings, plan, labels.names.length),
  ];
  return marks.filter((mark) => onSheet(mark, plan.mm));
}

function line(path: readonly Place[], plate: number | null = null, widthMm = HAIRLINE_MM): Mark {
  return { shape: 'line', path, widthMm, plate };
}

/** Two lines at every corner of the trim, beyond the bleed. */
function cropMarks({ trim: [left, top, right, bottom], markOffsetMm: off }: SheetPlan): Mark[] {
  const reach = off + CROP_LENGTH_MM;
  return [left, right].flatMap((x) => {
    const outX = x === left ? -1 : 1;
    return [top, bottom].flatMap((y) => {
      const outY = y === top ? -1 : 1;
      return [
        line([
          [x + outX * off, y],
          [x + outX * reach, y],
        ]),
        line([
          [x, y + outY * off],
          [x, y + outY * reach],
        ]),
      ];
    });
  });
}

/** A cross in a ring at the middle of every side. */
function registerMarks({ trim: [left, top, right, bottom], markOffsetMm: off }: SheetPlan): Mark[] {
  const half = REGISTER_SIZE_MM / 2;
  const middle: Place = [(left + right) / 2, (top + bottom) / 2];
  const centres: Place[] = [
    [middle[0], top - off - half],
    [middle[0], bottom + off + half],
    [left - off - half, middle[1]],
    [right + off + half, middle[1]],
  ];
  return centres.flatMap(([x, y]) => [
    line([
      [x - half, y],
      [x + half, y],
    ]),
    line([
      [x, y - half],
      [x, y + half],
    ]),
    line(ring([x, y], half * 0.6)),
  ]);
}

/** A circle in chords, its points rational: ((1 - t^2) / (1 + t^2), 2 t / (1 + t^2)). */
function ring([x, y]: Place, radius: number): Place[] {
  const quarter = Array.from({ length: RING_QUARTER }, (_, i) => {
    const t = i / RING_QUARTER;
    return [((1 - t * t) / (1 + t * t)) * radius, ((2 * t) / (1 + t * t)) * radius] as const;
  });
  const turns = [
    quarter,
    quarter.map(([a, b]) => [-b, a] as const),
    quarter.map(([a, b]) => [-a, -b] as const),
    quarter.map(([a, b]) => [b, -a] as const),
  ];
  const points = turns.flat().map(([a, b]) => [x + a, y + b] as const);
  return [...points, points[0]!];
}

/** The job on all plates, then the place and name of each on its own plate, above the crop marks. */
function nameMarks({ trim, bleed, slug }: SheetPlan, labels: Labels): Mark[] {
  const top = bleed[1] - slug[1] + (FOOT_ROW_MM - TEXT_MM) / 2;
  return nameRows(labels, trim[2] - trim[0]).flatMap((row, i) =>
    row.flatMap(({ text, plate, xMm }) =>
      letters(text, [trim[0] + xMm, top + i * FOOT_ROW_MM]).map((path) => line(path, plate, TEXT_STROKE_MM)),
    ),
  );
}

function letters(text: string, [x, y]: Place): Place[][] {
  const unit = TEXT_MM / CELL.height;
  return [...text].flatMap((letter, i) =>
    strokesOf(letter).map((run) =>
      run.map(([column, row]) => [x + (i * CELL.advance + column) * unit, y + row * unit] as const),
    ),
  );
}

/** Rows of patches at the foot: solid and half tint of every plate, then the steps of each. */
function footMarks(settings: SheetSettings, { trim, bleed, slug }: SheetPlan, plates: number): Mark[] {
  const rows = [
    ...(settings.colourBar ? [patches(BAR_TINTS, plates)] : []),
    ...(settings.tintWedge ? [patches(WEDGE_TINTS, plates)] : []),
  ];
  const inRow = perFootRow(trim[2] - trim[0], FOOT_ROW_MM);
  const foot = rows.map((row) => Math.ceil(row.length / inRow)).reduce((sum, count) => sum + count, 0);
  let y = bleed[3] + slug[3] - foot * FOOT_ROW_MM;
  return rows.flatMap((row) => {
    const first = y;
    y += Math.ceil(row.length / inRow) * FOOT_ROW_MM;
    return row.map(({ plate, tintPercent }, i): Mark => {
      const left = trim[0] + (i % inRow) * FOOT_ROW_MM;
      const top = first + Math.floor(i / inRow) * FOOT_ROW_MM + 0.5;
      return {
        shape: 'box',
        box: [left, top, left + FOOT_ROW_MM, top + FOOT_ROW_MM - 1],
        tintPercent,
        plate,
      };
    });
  });
}

function patches(tints: readonly number[], plates: number) {
  return Array.from({ length: plates }, (_, plate) =>
    tints.map((tintPercent) => ({ plate, tintPercent })),
  ).flat();
}

function onSheet(mark: Mark, [width, height]: readonly [number, number]): boolean {
  const points: readonly Place[] =
    mark.shape === 'line'
      ? mark.path
      : [
          [mark.box[0], mark.box[1]],
          [mark.box[2], mark.box[3]],
        ];
  return points.every(([x, y]) => x >= 0 && y >= 0 && x <= width && y <= height);
}
