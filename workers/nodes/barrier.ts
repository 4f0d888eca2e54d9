import { BadInput } from '../../src/graph/complaint.ts';
import type { RegionEdit } from '../../src/graph/region-edits.ts';
import type { Tools } from '../engine/evaluation.ts';
import type { BarrierValue, DrawingValue } from '../engine/values.ts';
import { FAR } from '../kernels/distance.ts';
import type { FoundRooms } from '../kernels/find-rooms.ts';
import type { HandLine, Refusal } from '../kernels/hand-lines.ts';
import { type LabelPlane, mmToPx, type Plane } from '../kernels/plane.ts';
import { NECK } from '../kernels/rooms.ts';
import { NO_SOLIDS } from '../kernels/solids.ts';
import { columnDistances } from './column-distances.ts';

/** Line is coverage from here on; regions and key line read the same plane. */
const LINE = 128;
/** How far from the place of an edit a mark may lie, mm. */
const REACH_MM = 1;
/** A larger mark is no speck, mm2. */
const LARGEST_MARK_MM2 = 100;

/** Edits that change what line is, before regions are looked for. */
export type ShapingEdit = Extract<RegionEdit, { does: 'draw-wall' | 'cut' | 'ignore-mark' }>;

export interface BarrierSettings {
  gapMm: number;
  tuckMm: number;
  edits: readonly ShapingEdit[];
}

/** Rooms that line and walls part, with all that is measured on pixels. */
export async function makeBarrier(
  { line: drawn, ppi }: DrawingValue,
  settings: BarrierSettings,
  tools: Tools,
): Promise<BarrierValue> {
  const { line, walls: handWalls } = await drawByHand(drawn, ppi, settings.edits, tools);
  const gap = mmToPx(settings.gapMm, ppi);
  const picture = { line: line.data, width: line.width, height: line.height, threshold: LINE };
  const found = await roomsOf(line, gap, tools);
  refuseEmpty(found.rooms.count, drawn);
  const [filled, openings] = await Promise.all([
    growUnderLine(line, found, mmToPx(settings.tuckMm, ppi), tools),
    tools.whole('openings', {
      ...picture,
      block: blockFor(gap, ppi),
      widest: mmToPx(Math.max(10 * settings.gapMm, 4), ppi),
    }),
  ]);
  const { width, height } = filled;
  if (handWalls.length > 0)
    await tools.whole('fillWalls', { labels: filled.data, width, height, walls: handWalls });
  const rooms = await measured(line, found, filled, tools);
  const { saddles, count } = found.rooms;
  const walls = await tools.whole('measureWalls', { ...picture, walls: found.rooms.walls });
  return {
    type: 'barrier',
    filled,
    rooms: { ...rooms, saddles, count },
    walls,
    openings,
    solids:
      rooms.filled[0] === 0 ? NO_SOLIDS : await tools.whole('solids', { labels: filled.data, width, height }),
  };
}

/** Blocks small enough that an opening just wider than the gap still shows, at any slant. */
function blockFor(gap: number, ppi: number): number {
  const finest = ppi >= 300 ? 2 : 1;
  return gap === 0 ? 2 * finest : Math.max(1, Math.min(4, Math.floor((gap - 1) / 3)));
}

const REFUSED: Record<Refusal, string> = {
  'no-region': 'there is only line under it, or nothing of the picture',
  'no-mark': `there is no mark within ${REACH_MM} mm`,
  'large-mark': `the mark there is larger than ${LARGEST_MARK_MM2} mm2, so it is no speck; erase it in the drawing`,
};

const NAMES = {
  'draw-wall': 'the wall drawn',
  cut: 'the cut',
  'ignore-mark': 'the mark ignored',
} as const;

async function drawByHand(line: Plane, ppi: number, edits: readonly ShapingEdit[], tools: Tools) {
  if (edits.length === 0) return { line, walls: new Uint32Array(0) };
  const px = ([x, y]: readonly [number, number]) => [mmToPx(x, ppi), mmToPx(y, ppi)] as const;
  const { width, height, data } = line;
  const out = tools.plane(width, height);
  const { walls, refusals } = await tools.whole('handLines', {
    line: data,
    width,
    height,
    threshold: LINE,
    edits: edits.map(
      (edit): HandLine =>
        edit.does === 'ignore-mark'
          ? { does: edit.does, at: px(edit.atMm) }
          : { does: edit.does, path: edit.pathMm.map(px) },
    ),
    reach: mmToPx(REACH_MM, ppi),
    largest: LARGEST_MARK_MM2 * mmToPx(1, ppi) ** 2,
    out: out.data,
  });
  refusals.forEach((refusal, i) => {
    if (refusal === null) return;
    const { does, ...edit } = edits[i]!;
    const placeMm = 'atMm' in edit ? edit.atMm : edit.pathMm[edit.pathMm.length >> 1]!;
    tools.complain({
      code: `edit-${refusal}`,
      severity: 'warning',
      message: `By hand: ${NAMES[does]} at ${placed(placeMm)} has no place: ${REFUSED[refusal]}.`,
      placeMm,
    });
  });
  return { line: out, walls };
}

/** "12.3, 40.0 mm" */
export function placed([x, y]: readonly [number, number]): string {
  return `${x.toFixed(1)}, ${y.toFixed(1)} mm`;
}

interface Found {
  /** Labels of free pixels. */
  labels: LabelPlane;
  rooms: FoundRooms;
}

async function roomsOf(line: Plane, gap: number, tools: Tools): Promise<Found> {
  const { width, height } = line;
  const half = (gap + 1) / 2;
  const limit2 = Math.floor((half / NECK) ** 2) + 1;
  const limit = Math.ceil(Math.sqrt(limit2));
  const sites = { lowest: LINE, highest: 255, limit, framed: true };
  const columns = await columnDistances(line, sites, tools);
  const fits = limit2 < FAR;
  const { buffer } = tools.bytes(width * height * (fits ? 2 : 4));
  const distance2 = fits ? new Uint16Array(buffer) : new Uint32Array(buffer);
  const zones = tools.plane(width, height).data;
  await tools.bands('nearDistance', { columns, width, near2: half * half, limit2, distance2, zones }, height);
  tools.free(columns);
  const labels = tools.labels(width, height);
  const rooms = await tools.whole('findRooms', { distance2, zones, width, height, labels: labels.data });
  tools.free(distance2);
  tools.free(zones);
  return { labels, rooms };
}

function refuseEmpty(rooms: number, line: Plane): void {
  if (rooms === 0)
    throw new BadInput(
      'the drawing is all line, with no paper left between; is it a negative, or is the threshold too low?',
    );
  if (rooms === 1 && !line.data.some((value) => value >= LINE))
    throw new BadInput('no line is left in the drawing; lower the threshold or the size of specks');
}

async function growUnderLine(line: Plane, found: Found, tuck: number, tools: Tools): Promise<LabelPlane> {
  const { width, height } = line;
  const sites = { lowest: 0, highest: LINE - 1, limit: Math.ceil(tuck), framed: false };
  const columns = await columnDistances(line, sites, tools);
  const filled = tools.labels(width, height);
  const args = {
    labels: found.labels.data,
    names: found.rooms.roomOf,
    columns,
    width,
    height,
    reach2: tuck * tuck,
    out: filled.data,
  };
  await tools.bands('grow', args, height);
  tools.free(columns);
  return filled;
}

async function measured(line: Plane, { labels, rooms }: Found, filled: LabelPlane, tools: Tools) {
  const { width, height } = line;
  const { count, roomOf: names } = rooms;
  const sites = { lowest: LINE, highest: 255, limit: FAR - 1, framed: true };
  const columns = await columnDistances(line, sites, tools);
  const distance2 = tools.labels(width, height).data;
  await tools.bands('squaredDistance', { columns, width, out: distance2 }, height);
  tools.free(columns);
  const [measures, pixels, borders] = await Promise.all([
    tools.whole('measureRegions', { labels: labels.data, names, distance2, width, height, count }),
    tools.whole('countLabels', { labels: filled.data, count }),
    tools.whole('borders', { labels: filled.data, width, height, count }),
  ]);
  tools.free(distance2);
  tools.free(labels.data);
  return { ...measures, filled: pixels, borders, peak: Float64Array.from(measures.deepest) };
}
