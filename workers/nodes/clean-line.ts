import type { SettingsOf } from '../../src/graph/node-kind.ts';
import { cleanLine as kind } from '../../src/nodes/clean-line.ts';
import { evaluation, type Tools } from '../engine/evaluation.ts';
import { otsu } from '../kernels/otsu.ts';
import { mmToPx, type Plane } from '../kernels/plane.ts';
import { softThreshold } from '../kernels/tone-table.ts';
import { columnDistances } from './column-distances.ts';

export const cleanLine = evaluation(kind, async ({ settings, inputs, tools }) => {
  const { drawing } = inputs;
  const parted = await threshold(drawing.line, settings, tools);
  const swept = await despeckle(parted, mmToPx(1, drawing.ppi) ** 2 * settings.speckMm2, tools);
  const line = await weigh(swept, mmToPx(settings.heavierMm, drawing.ppi), tools);
  return { drawing: { ...drawing, line } };
});

async function threshold(line: Plane, settings: SettingsOf<typeof kind>, tools: Tools): Promise<Plane> {
  const counts = await tools.whole('histogram', { data: line.data });
  const set = Math.round((settings.level * 255) / 100);
  const level = settings.threshold === 'set' ? Math.min(254, set) : autoLevel(counts);
  const out = tools.plane(line.width, line.height);
  await tools.bands(
    'toneTable',
    { from: line, to: out, table: softThreshold(level, settings.softness / 100) },
    line.height,
  );
  return out;
}

/** Share of pixels that are wholly paper or wholly line in a drawing that needs no search for its threshold. */
const CLEAN_SHARE = 0.9;

/** Half for clean artwork, whose soft edges are true coverage; Otsu's level for anything scanned. */
function autoLevel(counts: Uint32Array): number {
  let pixels = 0;
  let wholly = 0;
  counts.forEach((count, value) => {
    pixels += count;
    if (value <= 2 || value >= 253) wholly += count;
  });
  return wholly >= CLEAN_SHARE * pixels && counts[255]! > 0 ? 127 : otsu(counts);
}

async function despeckle(line: Plane, smallest: number, tools: Tools): Promise<Plane> {
  if (smallest === 0) return line;
  const { width, height, data } = line;
  const labels = tools.labels(width, height).data;
  const count = await tools.whole('components', {
    data,
    width,
    height,
    from: 1,
    to: 255,
    neighbours: 8,
    labels,
  });
  const ink = await tools.whole('weighMarks', { labels, line, count });
  const stays = Uint8Array.from(ink, (px) => (px >= smallest ? 1 : 0));
  const out = tools.plane(width, height);
  await tools.bands('eraseMarks', { labels, line, stays, out }, height);
  tools.free(labels);
  return out;
}

async function weigh(line: Plane, px: number, tools: Tools): Promise<Plane> {
  if (px === 0) return line;
  const { width, height } = line;
  const inverted = px < 0;
  const radius = Math.abs(px);
  const [lowest, highest] = inverted ? [0, 254] : [1, 255];
  const limit = Math.ceil(radius) + 1;
  const columns = await columnDistances(line, { lowest, highest, limit, framed: false }, tools);
  const out = tools.plane(width, height);
  await tools.bands('heavier', { line, columns, radius, inverted, out }, height);
  tools.free(columns);
  return out;
}
