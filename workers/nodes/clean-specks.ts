import type { Cleaning, Speck } from '../engine/cleaning.ts';
import type { Tools } from '../engine/evaluation.ts';
import { type Plane, pxToMm } from '../kernels/plane.ts';
import type { MarkList } from '../kernels/sift-marks.ts';

/** So many specks are told of one by one. */
const LISTED = 2000;
/** More marks than this are no drawing but the grain of the paper. */
const TOO_MANY = 100_000;

/** Takes lone marks under a size away. */
export async function despeckled(
  line: Plane,
  speckMm2: number,
  ppi: number,
  tools: Tools,
): Promise<{ line: Plane; specks: Cleaning['specks'] }> {
  if (speckMm2 === 0) return { line, specks: { count: 0, areaMm2: 0, largest: [] } };
  const { width, height, data } = line;
  const pxMm2 = pxToMm(1, ppi) ** 2;
  const labels = tools.labels(width, height).data;
  const any = { from: 1, to: 255, neighbours: 8 } as const;
  const count = await tools.whole('components', { data, width, height, ...any, labels });
  const sifting = { labels, line, count, smallest: speckMm2 / pxMm2, listed: LISTED };
  const { stays, gone, goneInk, largest } = await tools.whole('siftMarks', sifting);
  if (count > TOO_MANY)
    tools.complain({
      code: 'many-specks',
      severity: 'warning',
      message: `Clean line found ${count} single marks: ${gone} were smaller than ${speckMm2} mm2 and went, ${count - gone} stay. If dust or paper grain is left, raise "Specks up to", or set the threshold higher.`,
      measure: count,
    });
  const specks = { count: gone, areaMm2: goneInk * pxMm2, largest: specksOf(largest, ppi) };
  if (gone === 0) {
    tools.free(labels);
    return { line, specks };
  }
  const out = tools.plane(width, height);
  await tools.bands('eraseMarks', { labels, line, stays, out }, height);
  tools.free(labels);
  return { line: out, specks };
}

function specksOf({ ink, left, top, right, bottom }: MarkList, ppi: number): Speck[] {
  return Array.from(ink, (px, i) => {
    const edges = [left[i]!, top[i]!, right[i]! + 1, bottom[i]! + 1];
    const boxMm = edges.map((edge) => pxToMm(edge, ppi)) as Speck['boxMm'];
    return {
      boxMm,
      placeMm: [(boxMm[0] + boxMm[2]) / 2, (boxMm[1] + boxMm[3]) / 2],
      areaMm2: px * pxToMm(1, ppi) ** 2,
    };
  });
}

/** Fills holes in the line under a size. */
export async function pinholesFilled(
  line: Plane,
  pinholeMm2: number,
  ppi: number,
  tools: Tools,
): Promise<{ line: Plane; pinholes: Cleaning['pinholes'] }> {
  if (pinholeMm2 === 0) return { line, pinholes: { count: 0, areaMm2: 0 } };
  const { width, height, data } = line;
  const pxMm2 = pxToMm(1, ppi) ** 2;
  const labels = tools.labels(width, height).data;
  const paper = { from: 0, to: 127, neighbours: 4 } as const;
  const areas = await tools.whole('components', { data, width, height, ...paper, labels });
  const finding = { labels, count: areas, width, height, smallest: pinholeMm2 / pxMm2 };
  const { fills, count, pixels } = await tools.whole('findPinholes', finding);
  const pinholes = { count, areaMm2: pixels * pxMm2 };
  if (count === 0) {
    tools.free(labels);
    return { line, pinholes };
  }
  const out = tools.plane(width, height);
  await tools.bands('fillPinholes', { labels, line, fills, out }, height);
  tools.free(labels);
  return { line: out, pinholes };
}
