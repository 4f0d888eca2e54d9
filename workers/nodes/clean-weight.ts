import type { Tools } from '../engine/evaluation.ts';
import type { Plane } from '../kernels/plane.ts';
import { columnDistances } from './column-distances.ts';

/** Coverage from which a pixel is line. */
const LINE = 128;
/** Steps in which distances are told apart, one byte. */
const STEPS = 254;
/** Along the middle of a line that tapers, its half width changes by less than this a px; at its edge by 1. */
const RIDGE_SLOPE = 0.7;

/**
 * Moves both edges of every line outward by `px`, inward below 0, and keeps its soft edge. No two lines weld, no
 * paper between them closes, no line breaks or goes.
 */
export async function weighed(line: Plane, px: number, tools: Tools): Promise<Plane> {
  if (px === 0) return line;
  const { width, height } = line;
  const inverted = px < 0;
  const radius = Math.abs(px);
  const limit = Math.ceil(radius) + 1;
  const marks = inverted ? { lowest: 0, highest: 254 } : { lowest: 1, highest: 255 };
  const near = await columnDistances(line, { ...marks, limit, framed: false }, tools);
  const after = tools.plane(width, height);
  await tools.bands('heavier', { line, columns: near, radius, inverted, out: after }, height);
  tools.free(near);
  const change = { before: line, after };
  const edge = inverted ? { lowest: 0, highest: LINE - 1 } : { lowest: LINE, highest: 255 };
  const rank = await depths(change, line, edge, stepsOf(limit), tools);
  const reach = 2 * radius + 1;
  const left = { lowest: LINE, highest: 255 };
  const thin = inverted ? await depths(change, after, left, nothingWithin(reach), tools) : null;
  const ends = thin === null ? null : { thin, slope: (RIDGE_SLOPE * STEPS) / limit };
  const out = tools.plane(width, height);
  await tools.whole('keepTopology', { ...change, rank, ends, out });
  for (const scratch of [after.data, rank, ...(thin === null ? [] : [thin])]) tools.free(scratch);
  return out;
}

/** Distances up to `limit` px in `STEPS`. */
function stepsOf(limit: number): Uint8Array {
  return Uint8Array.from({ length: limit * limit + 1 }, (_, d2) =>
    Math.round((Math.sqrt(d2) / limit) * STEPS),
  );
}

/** 0 up to `reach` px, and above 0 beyond. */
function nothingWithin(reach: number): Uint8Array {
  return new Uint8Array(Math.floor(reach * reach) + 1);
}

/** Distance of every pixel that changes from the nearest of the `sites` in `plane`, by a table. */
async function depths(
  change: { before: Plane; after: Plane },
  plane: Plane,
  sites: { lowest: number; highest: number },
  table: Uint8Array,
  tools: Tools,
) {
  const limit = Math.ceil(Math.sqrt(table.length));
  const columns = await columnDistances(plane, { ...sites, limit, framed: false }, tools);
  const out = tools.bytes(plane.width * plane.height);
  await tools.bands('changeDepth', { ...change, columns, table, out }, plane.height);
  tools.free(columns);
  return out;
}
