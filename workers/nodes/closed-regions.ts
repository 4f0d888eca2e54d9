import type { RegionEdit } from '../../src/graph/region-edits.ts';
import { closedRegions as kind } from '../../src/nodes/closed-regions.ts';
import { evaluation, type Tools } from '../engine/evaluation.ts';
import type { BarrierValue, OpenGap, Wall } from '../engine/values.ts';
import { joinRooms, type Renaming } from '../kernels/join-rooms.ts';
import { type LabelPlane, mmToPx, pxToMm } from '../kernels/plane.ts';
import { makeBarrier, placed, type ShapingEdit } from './barrier.ts';
import { tableOf } from './region-table.ts';
import { openingAt, pixelAt, wallsComplaint } from './wall-places.ts';

export const closedRegions = evaluation(kind, async ({ settings, inputs, tools }) => {
  const { drawing } = inputs;
  const { ppi, mm } = drawing;
  const { gapMm, tuckMm, edits } = settings;
  const shaping = { gapMm, tuckMm, edits: edits.filter(isShaping) };
  const barrier = await tools.part('barrier', shaping, () => makeBarrier(drawing, shaping, tools));
  const opened = wallsOpened(edits, barrier, ppi, tools);
  const gap = mmToPx(gapMm, ppi);
  const regions = joinRooms(barrier.rooms, {
    smallest: mmToPx(1, ppi) ** 2 * settings.smallestMm2,
    roughness: mmToPx(settings.roughnessMm, ppi),
    frameJoins: settings.frame === 'joins' ? gap : null,
    opened: [...opened].map((wall) => [barrier.walls.a[wall]!, barrier.walls.b[wall]!]),
    joins: roomsJoined(edits, barrier, ppi, tools),
  });
  const walls = standing(barrier, opened, regions, ppi);
  const complaint = wallsComplaint(barrier, gapMm, ppi);
  if (complaint) tools.complain(complaint);
  return {
    regions: {
      type: 'regions',
      labels: await named(barrier, regions, tools),
      table: tableOf(barrier, regions, ppi),
      ids: [],
      walls,
      openGaps: gapsLeft(barrier, regions, gap, settings.smallestMm2, ppi),
      ppi,
      mm,
    },
  };
});

function isShaping(edit: RegionEdit): edit is ShapingEdit {
  return edit.does === 'draw-wall' || edit.does === 'cut' || edit.does === 'ignore-mark';
}

/** Walls that a person took down, by index. */
function wallsOpened(
  edits: readonly RegionEdit[],
  barrier: BarrierValue,
  ppi: number,
  tools: Tools,
): Set<number> {
  const opened = new Set<number>();
  for (const edit of edits) {
    if (edit.does !== 'open-wall') continue;
    const wall = openingAt(barrier, edit.atMm, ppi);
    if (wall !== null) opened.add(wall);
    else
      tools.complain({
        code: 'edit-no-wall',
        severity: 'warning',
        message: `By hand: the wall opened at ${placed(edit.atMm)} has no place: no wall stands near it now.`,
        placeMm: edit.atMm,
      });
  }
  return opened;
}

/** Pairs of rooms that a person joined. */
function roomsJoined(
  edits: readonly RegionEdit[],
  { filled }: BarrierValue,
  ppi: number,
  tools: Tools,
): [number, number][] {
  return edits.flatMap((edit): [number, number][] => {
    if (edit.does !== 'join') return [];
    const [a, b] = [edit.fromMm, edit.toMm].map((place) => filled.data[pixelAt(filled, place, ppi)] ?? 0) as [
      number,
      number,
    ];
    if (a !== 0 && b !== 0) return [[a, b]];
    const placeMm = a === 0 ? edit.fromMm : edit.toMm;
    tools.complain({
      code: 'edit-no-region',
      severity: 'warning',
      message: `By hand: the join at ${placed(placeMm)} has no place: there is no region under it.`,
      placeMm,
    });
    return [];
  });
}

/** The plane of regions; the rooms' own where no room joined another. */
async function named(barrier: BarrierValue, regions: Renaming, tools: Tools): Promise<LabelPlane> {
  const { filled, rooms } = barrier;
  if (regions.count === rooms.count) return filled;
  const { width, height } = filled;
  const labels = tools.labels(width, height);
  await tools.bands('relabel', { from: filled.data, to: labels.data, width, table: regions.table }, height);
  return labels;
}

/** Walls that part regions, and those that were opened. */
function standing(
  { walls, filled }: BarrierValue,
  opened: Set<number>,
  regions: Renaming,
  ppi: number,
): Wall[] {
  const place = (at: number): [number, number] => [
    pxToMm((at % filled.width) + 0.5, ppi),
    pxToMm(Math.floor(at / filled.width) + 0.5, ppi),
  ];
  return [...walls.width.keys()].flatMap((k): Wall[] => {
    const between: Wall['between'] = [regions.table[walls.a[k]!]!, regions.table[walls.b[k]!]!];
    if (between[0] === between[1] && !opened.has(k)) return [];
    return [
      {
        widthMm: pxToMm(walls.width[k]!, ppi),
        placeMm: place(walls.place[k]!),
        endsMm: [place(walls.endA[k]!), place(walls.endB[k]!)],
        between,
        opened: opened.has(k),
      },
    ];
  });
}

/** Openings wider than the gap that would part off a region if they were closed: much behind a narrow one first. */
function gapsLeft(
  { openings, filled }: BarrierValue,
  regions: Renaming,
  gap: number,
  smallestMm2: number,
  ppi: number,
): OpenGap[] {
  const regionAt = (pixel: number) => regions.table[filled.data[pixel]!]!;
  const gaps = [...openings.width.keys()].flatMap((k): OpenGap[] => {
    const parted = regionAt(openings.sideA[k]!) !== regionAt(openings.sideB[k]!);
    const partsMm2 = pxToMm(pxToMm(openings.area[k]!, ppi), ppi);
    if (openings.width[k]! <= gap || parted || partsMm2 < smallestMm2) return [];
    const placeMm: [number, number] = [pxToMm(openings.x[k]!, ppi), pxToMm(openings.y[k]!, ppi)];
    return [{ widthMm: pxToMm(openings.width[k]!, ppi), partsMm2, placeMm }];
  });
  const weight = ({ partsMm2, widthMm }: OpenGap) => partsMm2 / (widthMm * widthMm);
  return gaps.sort((a, b) => weight(b) - weight(a));
}
