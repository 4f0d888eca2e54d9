import { BadInput, type Complaint } from '../../../src/graph/complaint.ts';
import { strokesOf } from '../../../src/ink/form/letters.ts';
import { type Mark, sheetMarks } from '../../../src/press/marks.ts';
import type { SheetSettings } from '../../../src/press/sheet.ts';
import { BARE_SHEET, type PixelBox, type SheetPixels, sheetPixels } from '../../../src/press/sheet-pixels.ts';
import type { Tools } from '../../engine/evaluation.ts';
import type { PlatesValue, PlateValue } from '../../engine/values.ts';
import type { MarkPiece } from '../../kernels/draw-marks.ts';
import { mmToPx, type Plane } from '../../kernels/plane.ts';

/** Plates on their press sheet. */
export interface LaidOut {
  sheet: SheetPixels;
  settings: SheetSettings;
  marks: readonly Mark[];
  complaints: readonly Complaint[];
}

/**
 * Lays plates out on the sheet that is wired to the Press file, or on one of their own size.
 *
 * @throws BadInput when the bleed leaves nothing of the plates
 */
export function layOut(
  plates: PlatesValue,
  artAt: 'trim' | 'bleed',
  settings: SheetSettings | undefined,
  title: string,
): LaidOut {
  const { width, height } = plates.plates[0]!.coverage;
  const chosen = settings ?? BARE_SHEET;
  const side = chosen.side === 'back' ? ', back' : '';
  const labels = { title: `${title}${side}`, names: plates.plates.map(drawable) };
  const onSheet = { width, height, ppi: plates.ppi, artAt, labels };
  const sheet = sheetPixels(chosen, onSheet);
  const [left, top, right, bottom] = sheet.trim;
  if (right <= left || bottom <= top) throw new BadInput(sheet.plan.troubles[0]!);
  const complaints = sheet.plan.troubles.map(
    (message): Complaint => ({ code: 'sheet', severity: 'error', message }),
  );
  const marks = sheetMarks(chosen, sheet.plan, labels);
  const bare = artAt === 'trim' && chosen.bleedMm > 0 && chosen.bleedFrom === 'paper';
  if (bare && plates.plates.some(({ coverage }) => printsAtEdge(coverage))) complaints.push(BLEED_EMPTY);
  return { sheet, settings: chosen, marks, complaints };
}

const BLEED_EMPTY: Complaint = {
  code: 'bleed-empty',
  severity: 'warning',
  message:
    'Ink runs to the trim and the bleed beyond it is empty: a cut a little off shows paper. Let the Press sheet run the edge on outwards, or draw the art at bleed size.',
};

function printsAtEdge({ width, height, data }: Plane): boolean {
  const sides = data.subarray(0, width).some(Boolean) || data.subarray((height - 1) * width).some(Boolean);
  if (sides) return true;
  for (let y = 0; y < height; y++) if (data[y * width]! + data[(y + 1) * width - 1]! > 0) return true;
  return false;
}

/** The ink's name where there are letters for it, else the plate's. */
function drawable({ id, ink }: PlateValue): string {
  const written = [...ink.name].every((letter) => letter === ' ' || strokesOf(letter).length > 0);
  return written ? ink.name : id;
}

/** A plate cut or grown to a box of its sheet; the plate itself where that is the same. Taken from the tools. */
export async function inBox(plate: PlateValue, laid: LaidOut, box: PixelBox, tools: Tools): Promise<Plane> {
  const { coverage } = plate;
  const [left, top, right, bottom] = box;
  const at = [laid.sheet.art[0] - left, laid.sheet.art[1] - top] as const;
  const [width, height] = [right - left, bottom - top];
  if (at[0] === 0 && at[1] === 0 && width === coverage.width && height === coverage.height) return coverage;
  const to = tools.plane(width, height);
  await tools.bands(
    'place',
    { from: coverage, to, at, box: [0, 0, width, height], beyond: laid.settings.bleedFrom },
    height,
  );
  return to;
}

/** A plate on its whole sheet with its marks. Taken from the tools. */
export async function onSheet(plate: PlateValue, at: number, laid: LaidOut, tools: Tools): Promise<Plane> {
  const { sheet, settings, marks } = laid;
  const plane = tools.plane(sheet.width, sheet.height);
  await tools.bands(
    'place',
    { from: plate.coverage, to: plane, at: sheet.art, box: sheet.bleed, beyond: settings.bleedFrom },
    sheet.height,
  );
  const pieces = marks
    .filter((mark) => mark.plate === null || mark.plate === at)
    .flatMap((mark) => piecesOf(mark, sheet.ppi));
  if (pieces.length > 0) await tools.bands('drawMarks', { plane, pieces }, sheet.height);
  return plane;
}

function piecesOf(mark: Mark, ppi: number): MarkPiece[] {
  const px = (mm: number) => mmToPx(mm, ppi);
  if (mark.shape === 'box') {
    const [left, top, right, bottom] = mark.box;
    const box = [px(left), px(top), px(right), px(bottom)] as const;
    return [{ shape: 'box', box, value: Math.round(mark.tintPercent * 2.55) }];
  }
  const path = mark.path.map(([x, y]) => [px(x), px(y)] as const);
  return path.slice(1).map((to, i) => ({ shape: 'stroke', from: path[i]!, to, width: px(mark.widthMm) }));
}
