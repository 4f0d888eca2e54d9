import { BadInput } from '../../src/graph/complaint.ts';
import { closedRegions as kind } from '../../src/nodes/closed-regions.ts';
import { evaluation, type Tools } from '../engine/evaluation.ts';
import type { Region } from '../engine/values.ts';
import type { Borders } from '../kernels/borders.ts';
import { joinSmall } from '../kernels/join-small.ts';
import type { RegionMeasures } from '../kernels/measure-regions.ts';
import { type LabelPlane, mmToPx, type Plane, pxToMm } from '../kernels/plane.ts';
import { columnDistances } from './column-distances.ts';

/** Line is coverage from here on; regions and key line read the same plane. */
const LINE = 128;

export const closedRegions = evaluation(kind, async ({ settings, inputs, tools }) => {
  const { line, ppi, mm } = inputs.drawing;
  const tuck = mmToPx(settings.tuckMm, ppi);
  const smallest = mmToPx(1, ppi) ** 2 * settings.smallestMm2;
  const free = await freeAreas(line, tools);
  const filled = await growUnderLine(line, free.labels, tuck, tools);
  const joined = await joinSmallAreas(free, filled, smallest, tools);
  const { table, labels } = await measured(line, joined, ppi, tools);
  if (settings.gapMm > 0)
    tools.complain({
      code: 'gaps-not-closed',
      severity: 'note',
      message: 'Openings in the line are not bridged: areas that are open to one another are one region.',
    });
  return { regions: { type: 'regions', labels, table, ids: [], walls: [], openGaps: [], ppi, mm } };
});

interface Areas {
  labels: LabelPlane;
  count: number;
}

/** Areas of paper that line parts from one another, 4-connected. */
async function freeAreas(line: Plane, tools: Tools): Promise<Areas> {
  const { width, height, data } = line;
  const labels = tools.labels(width, height);
  const range = { from: 0, to: LINE - 1, neighbours: 4 } as const;
  const count = await tools.whole('components', { data, width, height, ...range, labels: labels.data });
  if (count === 0)
    throw new BadInput(
      'the drawing is all line, with no paper left between; is it a negative, or is the threshold too low?',
    );
  if (count === 1 && !data.some((value) => value >= LINE))
    throw new BadInput('no line is left in the drawing; lower the threshold or the size of specks');
  return { labels, count };
}

async function growUnderLine(line: Plane, from: LabelPlane, tuck: number, tools: Tools): Promise<LabelPlane> {
  const { width, height } = line;
  const sites = { lowest: 0, highest: LINE - 1, limit: Math.ceil(tuck), framed: false };
  const columns = await columnDistances(line, sites, tools);
  const grown = tools.labels(width, height);
  const args = { labels: from.data, columns, width, height, reach2: tuck * tuck, out: grown.data };
  await tools.bands('grow', args, height);
  tools.free(columns);
  return grown;
}

interface Joined {
  free: LabelPlane;
  filled: LabelPlane;
  count: number;
}

async function joinSmallAreas(
  free: Areas,
  filled: LabelPlane,
  smallest: number,
  tools: Tools,
): Promise<Joined> {
  const { labels, count } = free;
  const { width, height } = labels;
  const area = await tools.whole('countLabels', { labels: labels.data, count });
  if (!area.some((px, label) => label > 0 && px < smallest)) return { free: labels, filled, count };
  const [fill, touching] = await Promise.all([
    tools.whole('countLabels', { labels: filled.data, count }),
    tools.whole('borders', { labels: filled.data, width, height, count }),
  ]);
  const joined = joinSmall(area, fill, touching, smallest);
  const renamed = async (from: LabelPlane): Promise<LabelPlane> => {
    const to = tools.labels(width, height);
    await tools.bands('relabel', { from: from.data, to: to.data, width, table: joined.table }, height);
    tools.free(from.data);
    return to;
  };
  return { free: await renamed(labels), filled: await renamed(filled), count: joined.count };
}

async function measured(
  line: Plane,
  joined: Joined,
  ppi: number,
  tools: Tools,
): Promise<{ table: Region[]; labels: LabelPlane }> {
  const { width, height } = line;
  const { free, filled, count } = joined;
  const sites = { lowest: LINE, highest: 255, limit: 65_534, framed: true };
  const columns = await columnDistances(line, sites, tools);
  const distance2 = tools.labels(width, height).data;
  await tools.bands('squaredDistance', { columns, width, out: distance2 }, height);
  tools.free(columns);
  const [measures, touching] = await Promise.all([
    tools.whole('measureRegions', { labels: free.data, distance2, width, height, count }),
    tools.whole('borders', { labels: filled.data, width, height, count }),
  ]);
  tools.free(distance2);
  tools.free(free.data);
  return { table: tableOf(measures, touching, count, width, ppi), labels: filled };
}

function tableOf(
  measures: RegionMeasures,
  touching: Borders,
  count: number,
  width: number,
  ppi: number,
): Region[] {
  const mm = (px: number) => pxToMm(px, ppi);
  const table = Array.from({ length: count }, (_, i): Region => {
    const label = i + 1;
    const anchor = measures.anchor[label]!;
    return {
      label,
      areaMm2: measures.area[label]! * mm(1) * mm(1),
      anchorMm: [mm((anchor % width) + 0.5), mm(Math.floor(anchor / width) + 0.5)],
      boxMm: [
        mm(measures.left[label]!),
        mm(measures.top[label]!),
        mm(measures.right[label]!),
        mm(measures.bottom[label]!),
      ],
      touchesFrame: measures.touchesFrame[label] === 1,
      neighbours: [],
    };
  });
  touching.length.forEach((px, k) => {
    const a = touching.a[k]!;
    const b = touching.b[k]!;
    table[a - 1]!.neighbours.push({ label: b, sharedMm: mm(px) });
    table[b - 1]!.neighbours.push({ label: a, sharedMm: mm(px) });
  });
  for (const region of table) region.neighbours.sort((a, b) => b.sharedMm - a.sharedMm || a.label - b.label);
  return table;
}
