import type { Complaint } from '../../graph/complaint.ts';
import type { Press } from '../../graph/press.ts';
import { figureOf } from '../profiles.ts';
import type { SheetPlan } from '../sheet.ts';

/** A plate in cells of about a millimetre: the mean of each, 0 paper .. 255 solid. */
export interface PlateGrid {
  plate: string;
  cellMm: number;
  width: number;
  height: number;
  data: Uint8Array;
}

/** How a sheet lies in the press. */
export interface SheetInPress {
  plan: Pick<SheetPlan, 'mm' | 'trim'>;
  feedEdge: 'top' | 'right' | 'bottom' | 'left';
  /** No sheet is described: edges of the sheet are not known. */
  assumed: boolean;
}

/** Rounding and grain: a tint is above a limit when its cells are by more than this, %. */
const SLACK_PERCENT = 1;

const share = (value: number) => (value * 100) / 255;
const mm1 = (value: number) => Math.round(value * 10) / 10;

/** Large solids, and solids at the edge that enters first and along the middle of the feed. */
export function solidFaults(grid: PlateGrid, press: Press, sheet: SheetInPress): Complaint[] {
  const most = figureOf(press, 'mostSolidPercent');
  const large = figureOf(press, 'largeSolidCm2');
  if (most === null || large === null) return [];
  const { plate, cellMm } = grid;
  const dark = Uint8Array.from(grid.data, (value) => (share(value) > most + SLACK_PERCENT ? 1 : 0));
  const faults: Complaint[] = [];
  for (const patch of patchesOf(grid, dark)) {
    const cm2 = (patch.cells.length * cellMm * cellMm) / 100;
    if (cm2 < large) continue;
    faults.push({
      code: 'large-solid',
      severity: 'warning',
      message: `A solid of ${Math.round(cm2)} cm² on plate ${plate} prints at more than ${most} %: it may smear, stick to the drum or screen and set off. Bring it to ${most} % or less, or open it with a grain.`,
      placeMm: placeOf(grid, patch.middle),
      measure: mm1(cm2),
      plate,
    });
  }
  return [
    ...faults,
    ...leadFault(grid, dark, press, sheet, most),
    ...stripFault(grid, dark, press, sheet, most, large),
  ];
}

function leadFault(
  grid: PlateGrid,
  dark: Uint8Array,
  press: Press,
  sheet: SheetInPress,
  most: number,
): Complaint[] {
  const lead = figureOf(press, 'leadEdgeMm');
  if (lead === null) return [];
  const cells = cellsWhere(grid, dark, (x, y) => distanceToFeedEdge(sheet, x, y) < lead);
  const cm2 = (cells.length * grid.cellMm * grid.cellMm) / 100;
  if (cm2 < 1) return [];
  return [
    {
      code: 'solid-at-lead-edge',
      severity: 'warning',
      message: `${mm1(cm2)} cm² of plate ${grid.plate} print at more than ${most} % within ${lead} mm of the edge that enters the press first: the sheet may stick and jam. Leave that edge lighter, or turn the sheet.`,
      placeMm: placeOf(grid, cells[Math.floor(cells.length / 2)]!),
      measure: mm1(cm2),
      plate: grid.plate,
    },
  ];
}

function stripFault(
  grid: PlateGrid,
  dark: Uint8Array,
  press: Press,
  sheet: SheetInPress,
  most: number,
  large: number,
): Complaint[] {
  const strip = figureOf(press, 'centreStripMm');
  if (strip === null) return [];
  const cells = cellsWhere(grid, dark, (x, y) => Math.abs(offFeedCentre(sheet, x, y)) < strip / 2);
  const cm2 = (cells.length * grid.cellMm * grid.cellMm) / 100;
  if (cm2 < large / 2) return [];
  return [
    {
      code: 'solid-in-feed-centre',
      severity: 'warning',
      message: `${mm1(cm2)} cm² of plate ${grid.plate} print at more than ${most} % in the ${strip} mm down the middle of the feed, where rollers run: they may leave tracks. Bring it to ${most} % or less there.`,
      placeMm: placeOf(grid, cells[Math.floor(cells.length / 2)]!),
      measure: mm1(cm2),
      plate: grid.plate,
    },
  ];
}

/** All inks together above what the press takes; the place is the darkest. */
export function totalInkFaults(grids: readonly PlateGrid[], press: Press): Complaint[] {
  const most = figureOf(press, 'mostInkPercent');
  const first = grids[0];
  if (most === null || !first) return [];
  let count = 0;
  let greatest = 0;
  let at = 0;
  for (let cell = 0; cell < first.data.length; cell++) {
    const sum = grids.reduce((total, { data }) => total + share(data[cell]!), 0);
    if (sum <= most + SLACK_PERCENT) continue;
    count++;
    if (sum > greatest) [greatest, at] = [sum, cell];
  }
  if (count === 0) return [];
  const cm2 = mm1((count * first.cellMm * first.cellMm) / 100);
  return [
    {
      code: 'total-ink',
      severity: 'error',
      message: `All inks together reach ${Math.round(greatest)} % over ${cm2} cm², more than the ${most} % the press takes: it dries badly and sets off. Set a limit in Fill plates, or lighten a tint.`,
      placeMm: placeOf(first, at),
      measure: Math.round(greatest),
    },
  ];
}

/** Ink where the press cannot print: nearer to the edge of the sheet than its margin. */
export function marginFaults(grid: PlateGrid, press: Press, sheet: SheetInPress): Complaint[] {
  const margin = figureOf(press, 'marginMm');
  if (margin === null || sheet.assumed) return [];
  const [left, top] = sheet.plan.trim;
  const [width, height] = sheet.plan.mm;
  const printed = Uint8Array.from(grid.data, (value) => (value > 0 ? 1 : 0));
  const cells = cellsWhere(grid, printed, (x, y) => {
    const [fromLeft, fromTop] = [left + x, top + y];
    return Math.min(fromLeft, fromTop, width - fromLeft, height - fromTop) < margin;
  });
  if (cells.length === 0) return [];
  return [
    {
      code: 'in-margin',
      severity: 'error',
      message: `Plate ${grid.plate} prints within ${margin} mm of the edge of the sheet, where this press cannot. Use a larger Press sheet, or keep the edge free.`,
      placeMm: placeOf(grid, cells[0]!),
      measure: margin,
      plate: grid.plate,
    },
  ];
}

function distanceToFeedEdge({ plan, feedEdge }: SheetInPress, x: number, y: number): number {
  const [width, height] = plan.mm;
  const [fromLeft, fromTop] = [plan.trim[0] + x, plan.trim[1] + y];
  return { top: fromTop, bottom: height - fromTop, left: fromLeft, right: width - fromLeft }[feedEdge];
}

function offFeedCentre({ plan, feedEdge }: SheetInPress, x: number, y: number): number {
  const upright = feedEdge === 'top' || feedEdge === 'bottom';
  return upright ? plan.trim[0] + x - plan.mm[0] / 2 : plan.trim[1] + y - plan.mm[1] / 2;
}

function cellsWhere(
  grid: PlateGrid,
  marks: Uint8Array,
  holds: (xMm: number, yMm: number) => boolean,
): number[] {
  const cells: number[] = [];
  for (let cell = 0; cell < marks.length; cell++) {
    if (marks[cell] === 0) continue;
    const [x, y] = placeOf(grid, cell);
    if (holds(x, y)) cells.push(cell);
  }
  return cells;
}

function placeOf({ width, cellMm }: PlateGrid, cell: number): [number, number] {
  return [mm1(((cell % width) + 0.5) * cellMm), mm1((Math.floor(cell / width) + 0.5) * cellMm)];
}

interface Patch {
  cells: number[];
  /** The cell that was reached half way. */
  middle: number;
}

/** Runs of marked cells that touch by a side. */
function patchesOf({ width, height }: PlateGrid, marks: Uint8Array): Patch[] {
  const seen = new Uint8Array(marks.length);
  const patches: Patch[] = [];
  for (let start = 0; start < marks.length; start++) {
    if (marks[start] === 0 || seen[start] === 1) continue;
    const cells = [start];
    seen[start] = 1;
    for (let next = 0; next < cells.length; next++) {
      const cell = cells[next]!;
      const x = cell % width;
      const y = Math.floor(cell / width);
      const around = [
        x > 0 ? cell - 1 : -1,
        x + 1 < width ? cell + 1 : -1,
        y > 0 ? cell - width : -1,
        y + 1 < height ? cell + width : -1,
      ];
      for (const other of around) {
        if (other < 0 || marks[other] === 0 || seen[other] === 1) continue;
        seen[other] = 1;
        cells.push(other);
      }
    }
    patches.push({ cells, middle: cells[Math.floor(cells.length / 2)]! });
  }
  return patches;
}

/** Whether a plate meant to print solids reaches none: supplied too pale. */
export function paleFault(plate: string, greatest: number, hasSolid: boolean): Complaint[] {
  if (!hasSolid || greatest === 0 || share(greatest) >= 90) return [];
  return [
    {
      code: 'plate-pale',
      severity: 'error',
      message: `Plate ${plate} is nowhere darker than ${Math.round(share(greatest))} %, though a solid is meant: pale inks are supplied as black too. Set its solids to 100 %.`,
      measure: Math.round(share(greatest)),
      plate,
    },
  ];
}
