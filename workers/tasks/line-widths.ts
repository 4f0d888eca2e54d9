import type { Survey } from '../../src/graph/survey.ts';
import type { Tools } from '../engine/evaluation.ts';
import type { DrawingValue } from '../engine/values.ts';
import { mmToPx, pxToMm } from '../kernels/plane.ts';
import { mm3 } from './report-parts.ts';

/** What is broader is no line but a solid. */
const BROADEST_MM = 3;
/** Depths are told apart in so many steps, one byte. */
const STEPS = 254;

type Widths = Survey['line']['widthsMm'];

/** Widths along the middle of the line, to about half a pixel; null where there is none. */
export async function lineWidths({ line, ppi }: DrawingValue, tools: Tools): Promise<Widths> {
  const { width, height, data } = line;
  const limit = Math.ceil(mmToPx(BROADEST_MM, ppi) / 2) + 1;
  const columns = new Uint16Array(tools.bytes(width * height * 2).buffer);
  const paper = { lowest: 0, highest: 127, limit, framed: false };
  await tools.bands('columnDistance', { data, width, height, ...paper, out: columns }, width);
  const depth = tools.plane(width, height);
  const table = Uint8Array.from({ length: limit * limit + 1 }, (_, d2) =>
    Math.round((Math.sqrt(d2) / limit) * STEPS),
  );
  await tools.bands('depth', { columns, width, table, beyond: STEPS + 1, out: depth.data }, height);
  tools.free(columns);
  const counts = await tools.whole('ridgeWidths', { depth });
  tools.free(depth.data);
  const widths = [...counts.keys()].map((slot) => {
    const px = ((slot >> 1) * limit) / STEPS;
    return { mm: pxToMm(2 * px - (slot & 1 ? 0 : 1), ppi), count: counts[slot]! };
  });
  widths.sort((a, b) => a.mm - b.mm);
  const total = counts.reduce((sum, count) => sum + count, 0);
  if (total === 0) return null;
  const upTo = (share: number) => {
    let sum = 0;
    for (const { mm, count } of widths) {
      sum += count;
      if (sum >= share * total) return mm3(mm);
    }
    return mm3(widths.at(-1)!.mm);
  };
  return { thinnest: upTo(0.01), low: upTo(0.1), middle: upTo(0.5), high: upTo(0.9) };
}
