import { components } from '../../workers/kernels/components.ts';
import { columnDistance, squaredDistance } from '../../workers/kernels/distance.ts';
import { histogram } from '../../workers/kernels/histogram.ts';
import { otsu } from '../../workers/kernels/otsu.ts';
import { softThreshold, toneTable } from '../../workers/kernels/tone-table.ts';
import { type Measured, measure } from './measure.ts';
import { loadOpenCv, matOf } from './opencv.ts';
import { demoLine, sharedLabels, sharedPlane } from './pictures.ts';

export interface Row {
  step: string;
  ours: Measured;
  theirs: Measured;
}

/** One thread, the demo's drawing at `ppi`: our kernels beside OpenCV's same step. */
export async function kernelRows(ppi: number): Promise<{ megapixels: number; rows: Row[] }> {
  const { cv } = await loadOpenCv();
  const line = await demoLine(ppi);
  const { width, height, data } = line;
  const parted = sharedPlane(width, height);
  const labels = sharedLabels(width * height);
  const columns = new Uint16Array(new SharedArrayBuffer(width * height * 2));
  const grey = matOf(cv, line);
  const free = matOf(cv, line, true);
  cv.threshold(free, free, 127, 255, cv.THRESH_BINARY);
  const out = new cv.Mat();

  const free4 = { data, width, height, from: 0, to: 127, neighbours: 4, labels } as const;
  const sites = { data, width, height, lowest: 128, highest: 255, limit: 65_534, framed: true, out: columns };
  const steps: [string, () => unknown, () => unknown][] = [
    [
      'Otsu threshold',
      () => {
        const table = softThreshold(otsu(histogram({ data })), 0);
        toneTable({ from: line, to: parted, table }, 0, height);
      },
      () => cv.threshold(grey, out, 0, 255, cv.THRESH_BINARY | cv.THRESH_OTSU),
    ],
    [
      'connected components, 4',
      () => components(free4),
      () => cv.connectedComponents(free, out, 4, cv.CV_32S),
    ],
    [
      'exact distance',
      () => {
        for (let x = 0; x < width; x += 256) columnDistance(sites, x, Math.min(width, x + 256));
        squaredDistance({ columns, width, out: labels }, 0, height);
      },
      () => cv.distanceTransform(free, out, cv.DIST_L2, cv.DIST_MASK_PRECISE),
    ],
  ];
  const rows: Row[] = [];
  for (const [step, ours, theirs] of steps)
    rows.push({ step, ours: await measure(ours), theirs: await measure(theirs) });
  for (const mat of [grey, free, out]) mat.delete();
  return { megapixels: (width * height) / 1e6, rows };
}
