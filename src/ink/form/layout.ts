import { textWidth } from './letters.ts';

/** A printable page, mm. */
export interface Page {
  widthMm: number;
  heightMm: number;
}

/** A plate that the form is for. */
export interface FormPlate {
  id: string;
  /** Id of its ink. */
  ink: string;
}

export interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** A patch of flat tints; places in mm from the upper left corner of the page. */
export interface Patch extends Box {
  id: string;
  /** Share 0..1 of each plate, in print order. */
  tints: readonly number[];
}

/** Something that prints solid on one plate, or white in a solid of it. */
export interface Bar extends Box {
  plate: number;
  /** 1 prints, 0 is left out of a solid beneath. */
  tint: 0 | 1;
}

export interface Label {
  text: string;
  height: number;
  at: readonly [number, number];
  /** The plate that prints it; -1: all. */
  plate: number;
}

export interface FormLayout {
  page: Page;
  plates: readonly FormPlate[];
  patches: readonly Patch[];
  /** Ladders and rulers, painted in this order. */
  bars: readonly Bar[];
  labels: readonly Label[];
  /** Middles of the four corner marks: upper left, upper right, lower right, lower left. */
  corners: readonly (readonly [number, number])[];
}

/** Widths of the ladder of lines, mm. */
export const LADDER = [0.05, 0.08, 0.1, 0.13, 0.18, 0.25, 0.35, 0.5, 0.7] as const;
/** Steps of the tint patches. */
const TINT_STEPS = Array.from({ length: 20 }, (_, i) => (i + 1) / 20);

const PATCH = 10;
const MARGIN = 12;
const GAP = 1.5;
const SMALL = 1.8;
const MARK = 4;
const ROW = PATCH + SMALL + 2 * GAP;
/**
 * Marks of the register ruler lie 1 mm apart on the first plate and 0.9 mm on the others. The mark of the other that
 * meets one of the first, counted from the middle, is the drift in tenths; the middle itself shows whole millimetres.
 */
const RULER = { marks: 21, pitch: 1, otherMarks: 11, other: 0.9, length: 2.4, width: 0.1 } as const;
/** So many plates share no patch with one another beyond pairs: triples would fill pages. */
const MOST_FOR_TRIPLES = 5;

/**
 * A form to print on one's own press: solids and overprints, tints of 5 to 100 % as patches of 10 mm, ladders of
 * lines that print and lines left out, and a register ruler.
 *
 * @param plates 1 to 12, in print order
 * @param page with room for the form
 * @throws RangeError that says how large the page must be
 */
export function formLayout(plates: readonly FormPlate[], page: Page): FormLayout {
  const across = Math.floor((page.widthMm - 2 * MARGIN + GAP) / (PATCH + GAP));
  const patches: Patch[] = [];
  const bars: Bar[] = [];
  const labels: Label[] = [{ text: 'PRESS TEST', height: 3, at: [MARGIN + 8, MARGIN - 7], plate: -1 }];
  let y = MARGIN;
  plates.forEach(({ id }, at) => {
    const x = MARGIN + 36 + (at % 5) * 30;
    labels.push({
      text: `${at + 1} ${id}`,
      height: SMALL,
      at: [x, MARGIN - 7 + 3 * Math.floor(at / 5)],
      plate: at,
    });
  });

  const row = (named: readonly { id: string; text: string; tints: readonly number[] }[]) => {
    named.forEach(({ id, text, tints }, i) => {
      const x = MARGIN + (i % across) * (PATCH + GAP);
      const top = y + Math.floor(i / across) * ROW;
      patches.push({ id, tints, x, y: top + SMALL + GAP, width: PATCH, height: PATCH });
      labels.push({ text, height: fitted(text), at: [x, top], plate: darkestOf(tints) });
    });
    y += Math.ceil(named.length / across) * ROW + GAP;
  };

  const only = (share: (plate: number) => number) => plates.map((_, plate) => share(plate));
  row([{ id: 'paper', text: 'PAPER', tints: only(() => 0) }, ...overprintsOf(plates)]);
  plates.forEach((plate, at) => {
    row(
      TINT_STEPS.map((step) => ({
        id: `${plate.id} ${Math.round(step * 100)}`,
        text: `${at + 1}:${Math.round(step * 100)}%`,
        tints: only((other) => (other === at ? step : 0)),
      })),
    );
  });
  plates.forEach((_, at) => {
    y += ladder(at, [MARGIN, y], bars, labels) + GAP;
  });
  if (plates.length > 1) y += rulers(plates.length, [MARGIN, y], page.widthMm, bars, labels);
  const needed = y + MARGIN;
  if (across < 6 || needed > page.heightMm)
    throw new RangeError(
      `the form for ${plates.length} plates needs a page of ${Math.max(90, Math.ceil(page.widthMm))} x ${Math.ceil(needed)} mm, not ${page.widthMm} x ${page.heightMm}; choose a larger one or fewer plates`,
    );
  const inset = MARK + 1;
  const [right, bottom] = [page.widthMm - inset, page.heightMm - inset];
  const corners = [
    [inset, inset],
    [right, inset],
    [right, bottom],
    [inset, bottom],
  ] as const;
  return { page, plates, patches, bars, labels, corners };
}

/** Solids, pairs and, of few plates, triples; all of them together. */
function overprintsOf(plates: readonly FormPlate[]) {
  const most = plates.length <= MOST_FOR_TRIPLES ? 3 : 2;
  const sets = Array.from({ length: 2 ** plates.length - 1 }, (_, i) => i + 1).filter((set) => {
    const count = plates.filter((_, plate) => set & (1 << plate)).length;
    return count <= most || count === plates.length;
  });
  const size = (set: number) => plates.filter((_, plate) => set & (1 << plate)).length;
  return sets
    .sort((a, b) => size(a) - size(b) || a - b)
    .map((set) => {
      const members = plates.flatMap((_, plate) => (set & (1 << plate) ? [plate] : []));
      return {
        id: members.map((plate) => plates[plate]!.id).join(' + '),
        text: members.map((plate) => plate + 1).join('+'),
        tints: plates.map((_, plate) => (set & (1 << plate) ? 1 : 0)),
      };
    });
}

/** Height of a label that stays over its patch. */
function fitted(text: string): number {
  return Math.min(SMALL, (SMALL * PATCH) / textWidth(text, SMALL));
}

/** The plate that lays most ink there; all of them where none does. */
function darkestOf(tints: readonly number[]): number {
  const most = Math.max(...tints);
  return most === 0 ? -1 : tints.indexOf(most);
}

/** Lines that print beside lines left out of a solid, of every width both ways. Returns the height taken. */
function ladder(plate: number, [x, y]: readonly [number, number], bars: Bar[], labels: Label[]): number {
  const length = 8;
  const pitch = 7;
  labels.push({ text: `${plate + 1}`, height: SMALL, at: [x, y + 3], plate });
  LADDER.forEach((width, i) => {
    const left = x + 5 + i * pitch;
    labels.push({ text: `${width}`, height: 1.3, at: [left, y], plate });
    bars.push({ plate, tint: 1, x: left, y: y + 2.5, width, height: length });
    bars.push({ plate, tint: 1, x: left + 2, y: y + 2.5, width: 3.6, height: width });
  });
  const solid = x + 5 + LADDER.length * pitch + 3;
  bars.push({
    plate,
    tint: 1,
    x: solid - 2,
    y: y + 1.5,
    width: LADDER.length * pitch + 2,
    height: length + 2,
  });
  LADDER.forEach((width, i) => {
    const left = solid + i * pitch;
    bars.push({ plate, tint: 0, x: left, y: y + 2.5, width, height: length });
    bars.push({ plate, tint: 0, x: left + 2, y: y + 2.5, width: 3.6, height: width });
  });
  return length + 4;
}

/** For every further plate two rulers against the first: along the sheet and across. Returns the height taken. */
function rulers(
  count: number,
  [x, y]: readonly [number, number],
  pageWidth: number,
  bars: Bar[],
  labels: Label[],
): number {
  const middle = (RULER.marks - 1) / 2;
  const span = middle * RULER.pitch;
  const perRow = Math.max(1, Math.floor((pageWidth - 2 * MARGIN) / (4 * span + 14)));
  const high = 2 * span + 6;
  for (let plate = 1; plate < count; plate++) {
    const at = plate - 1;
    const left = x + (at % perRow) * (4 * span + 14);
    const top = y + Math.floor(at / perRow) * high;
    const [acrossX, acrossY] = [left + span + 1, top + 6];
    const [alongX, alongY] = [left + 3 * span + 8, top + span + 2];
    labels.push({ text: `${plate + 1} ON 1`, height: SMALL, at: [left, top], plate });
    for (let mark = -middle; mark <= middle; mark++) {
      const long = mark % 5 === 0 ? 1 : 0;
      const size = RULER.length + long;
      for (const [layer, pitch] of [
        [0, RULER.pitch],
        [plate, RULER.other],
      ] as const) {
        if (layer !== 0 && Math.abs(mark) > (RULER.otherMarks - 1) / 2) continue;
        const half = RULER.width / 2;
        const outward = layer === 0 ? -size : 0;
        bars.push({
          plate: layer,
          tint: 1,
          x: acrossX + mark * pitch - half,
          y: acrossY + outward,
          width: RULER.width,
          height: size,
        });
        bars.push({
          plate: layer,
          tint: 1,
          x: alongX + outward,
          y: alongY + mark * pitch - half,
          width: size,
          height: RULER.width,
        });
      }
    }
  }
  return Math.ceil((count - 1) / perRow) * high;
}
