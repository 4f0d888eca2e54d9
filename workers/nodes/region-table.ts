import type { BarrierValue, Region } from '../engine/values.ts';
import { bordersBy, type Renaming, sumBy } from '../kernels/join-rooms.ts';
import { surroundings } from '../kernels/nesting.ts';
import { pxToMm } from '../kernels/plane.ts';

/** The table of regions that rooms have become. */
export function tableOf(barrier: BarrierValue, regions: Renaming, ppi: number): Region[] {
  const { rooms, filled } = barrier;
  const { table, count } = regions;
  const mm = (px: number) => pxToMm(px, ppi);
  const area = sumBy(regions, rooms.area);
  const rows = Array.from({ length: count }, (_, i): Region => {
    const nowhere: Region['boxMm'] = [Infinity, Infinity, 0, 0];
    return {
      label: i + 1,
      areaMm2: area[i + 1]! * mm(1) * mm(1),
      anchorMm: [0, 0],
      boxMm: nowhere,
      touchesFrame: false,
      neighbours: [],
      inside: null,
    };
  });
  const deepest = new Float64Array(count + 1);
  for (let room = 1; room <= rooms.count; room++) {
    const row = rows[table[room]! - 1]!;
    const [left, top, right, bottom] = row.boxMm;
    row.boxMm = [
      Math.min(left, mm(rooms.left[room]!)),
      Math.min(top, mm(rooms.top[room]!)),
      Math.max(right, mm(rooms.right[room]!)),
      Math.max(bottom, mm(rooms.bottom[room]!)),
    ];
    row.touchesFrame ||= rooms.frameRun[room]! > 0;
    if (rooms.deepest[room]! <= deepest[row.label]!) continue;
    deepest[row.label] = rooms.deepest[room]!;
    const at = rooms.anchor[room]!;
    row.anchorMm = [mm((at % filled.width) + 0.5), mm(Math.floor(at / filled.width) + 0.5)];
  }
  const borders = bordersBy(regions, rooms.borders);
  borders.length.forEach((px, k) => {
    const [a, b] = [borders.a[k]!, borders.b[k]!];
    rows[a - 1]!.neighbours.push({ label: b, sharedMm: mm(px) });
    rows[b - 1]!.neighbours.push({ label: a, sharedMm: mm(px) });
  });
  for (const row of rows) row.neighbours.sort((a, b) => b.sharedMm - a.sharedMm || a.label - b.label);
  nest(rows, barrier, regions);
  return rows;
}

/** Says of every region which one surrounds it; solid line between them counts as neither. */
function nest(rows: Region[], { filled, solids }: BarrierValue, { table, count }: Renaming): void {
  const borders = rows.flatMap((row) => row.neighbours.map(({ label }) => [row.label, label] as const));
  const pairs = borders.filter(([a, b]) => a < b);
  const around = surroundings(
    count + solids.count,
    {
      a: [...pairs.map(([a]) => a), ...Array.from(solids.region, (room) => table[room]!)],
      b: [...pairs.map(([, b]) => b), ...Array.from(solids.solid, (solid) => count + solid)],
    },
    [...regionsAtFrame(filled, table), ...Array.from(solids.atFrame, (solid) => count + solid)],
  );
  for (const row of rows) {
    let outer = around[row.label]!;
    while (outer > count) outer = around[outer]!;
    row.inside = outer === 0 ? null : outer;
  }
}

function regionsAtFrame({ width, height, data }: BarrierValue['filled'], table: Uint32Array): Set<number> {
  const touching = new Set<number>();
  for (let x = 0; x < width; x++) for (const y of [0, height - 1]) touching.add(table[data[y * width + x]!]!);
  for (let y = 0; y < height; y++) for (const x of [0, width - 1]) touching.add(table[data[y * width + x]!]!);
  touching.delete(0);
  return touching;
}
