import { type GrainField, grainRow } from './grain-field.ts';
import type { GrainTable } from './grain-table.ts';
import type { Plane } from './plane.ts';

export interface GrainArgs {
  plate: Plane;
  out: Plane;
  field: GrainField;
  /** Pitch of the pixels, mm. */
  pixelMm: number;
  table: GrainTable;
  /** Towards the edge of ink another table takes over: 0 none of it .. 255 all. */
  edge?: { near: Plane; table: GrainTable };
}

/** Breaks tints up by the levels of a grain, for rows `from..to`. Where a table leaves a tint flat it stays so. */
export function grain(args: GrainArgs, from: number, to: number): void {
  const { field, pixelMm, table, edge } = args;
  const { width } = args.plate;
  const plate = args.plate.data;
  const out = args.out.data;
  const flat = flatTints(table, edge?.table ?? table);
  const levels = new Uint8Array(width);
  const scratch = new Float32Array(width);
  for (let y = from; y < to; y++) {
    const row = y * width;
    let x = 0;
    while (x < width) {
      const start = x;
      while (x < width && flat[plate[row + x]!] !== 0) x++;
      for (let k = start; k < x; k++) out[row + k] = table[plate[row + k]! << 8]!;
      const first = x;
      while (x < width && flat[plate[row + x]!] === 0) x++;
      grainRow(field, y, pixelMm, scratch, levels, first, x);
      for (let k = first; k < x; k++) out[row + k] = table[(plate[row + k]! << 8) | levels[k]!]!;
      if (edge) strengthen(edge, plate, out, levels, row, first, x);
    }
  }
}

function strengthen(
  edge: { near: Plane; table: GrainTable },
  plate: Uint8Array,
  out: Uint8Array,
  levels: Uint8Array,
  row: number,
  from: number,
  to: number,
): void {
  const near = edge.near.data;
  for (let k = from; k < to; k++) {
    const share = near[row + k]!;
    if (share === 0) continue;
    const strong = edge.table[(plate[row + k]! << 8) | levels[k]!]!;
    out[row + k] = (out[row + k]! * (255 - share) + strong * share + 127) / 255;
  }
}

/** For each coverage whether both tables leave it flat, and alike. */
function flatTints(a: GrainTable, b: GrainTable): Uint8Array {
  return Uint8Array.from({ length: 256 }, (_, v) => {
    const row = a.subarray(v * 256, v * 256 + 256);
    const other = b.subarray(v * 256, v * 256 + 256);
    return row.every((value, u) => value === row[0] && other[u] === row[0]) ? 1 : 0;
  });
}
