import { keyLine as kind } from '../../src/nodes/key-line.ts';
import { evaluation, type Tools } from '../engine/evaluation.ts';
import { samePlates } from '../engine/same-plates.ts';
import { mmToPx, type Plane } from '../kernels/plane.ts';
import { columnDistances } from './column-distances.ts';
import { keptWithin } from './kept-within.ts';

/** Coverage of a pixel that lies wholly inside the line, past its soft edge. */
const FULL = 255;

export const keyLine = evaluation(kind, async ({ settings, inputs, tools }) => {
  const { plates, drawing, area } = inputs;
  const { line } = drawing;
  samePlates(plates, line);
  const fillsOf = (id: string) => settings.fillsOf[id] ?? settings.fills;
  const knocks = plates.plates.some((plate) => fillsOf(plate.id) === 'knocked-out');
  const knockout = knocks ? await knockoutOf(line, mmToPx(settings.insetMm, drawing.ppi), tools) : null;
  const printed = plates.plates.map(async (plate) => {
    const out = tools.plane(line.width, line.height);
    const tint = Math.round(((settings.tintPercentOf[plate.id] ?? settings.tintPercent) * 255) / 100);
    const taken = fillsOf(plate.id) === 'knocked-out' ? knockout : null;
    await tools.bands('printLine', { fill: plate.coverage, line, knockout: taken, tint, out }, line.height);
    if (!area) return { ...plate, coverage: out };
    return { ...plate, coverage: await keptWithin(plate.coverage, out, area.mask, tools) };
  });
  return { plates: { ...plates, plates: await Promise.all(printed) } };
});

/** How far inside the line a fill is gone: 0 up to `inset` px behind the last soft pixel, 255 one pixel on. */
async function knockoutOf(line: Plane, inset: number, tools: Tools): Promise<Plane> {
  const { width, height } = line;
  const limit = Math.ceil(inset) + 1;
  const sites = { lowest: 0, highest: FULL - 1, limit, framed: false };
  const columns = await columnDistances(line, sites, tools);
  const table = Uint8Array.from({ length: limit * limit + 1 }, (_, d2) =>
    d2 === 0 ? 0 : Math.round(255 * Math.min(1, Math.max(0, Math.sqrt(d2) - inset))),
  );
  const knockout = tools.plane(width, height);
  await tools.bands('depth', { columns, width, table, beyond: 255, out: knockout.data }, height);
  tools.free(columns);
  return knockout;
}
