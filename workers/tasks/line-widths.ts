import type { Survey } from '../../src/graph/survey.ts';
import type { Tools } from '../engine/evaluation.ts';
import type { DrawingValue } from '../engine/values.ts';
import { mmToPx, pxToMm } from '../kernels/plane.ts';
import { depthPlane, widthOfDepth } from './depth-plane.ts';
import { mm3 } from './report-parts.ts';

/** What is broader is no line but a solid. */
const BROADEST_MM = 3;
const PAPER = { lowest: 0, highest: 127 };

type Widths = Survey['line']['widthsMm'];

/** Widths along the middle of the line, to about half a pixel; null where there is none. */
export async function lineWidths({ line, ppi }: DrawingValue, tools: Tools): Promise<Widths> {
  const limit = Math.ceil(mmToPx(BROADEST_MM, ppi) / 2) + 1;
  const depth = await depthPlane(line, PAPER, limit, tools);
  const counts = await tools.whole('ridgeWidths', { depth });
  tools.free(depth.data);
  const widths = [...counts.keys()].map((slot) => {
    const px = widthOfDepth(slot >> 1, (slot & 1) === 0, limit);
    return { mm: pxToMm(px, ppi), count: counts[slot]! };
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
