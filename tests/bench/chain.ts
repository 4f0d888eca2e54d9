import { columnDistance, FAR } from '../../workers/kernels/distance.ts';
import { findRooms } from '../../workers/kernels/find-rooms.ts';
import { grow } from '../../workers/kernels/grow.ts';
import { histogram } from '../../workers/kernels/histogram.ts';
import { nearDistance } from '../../workers/kernels/near-distance.ts';
import { otsu } from '../../workers/kernels/otsu.ts';
import { mmToPx, type Plane } from '../../workers/kernels/plane.ts';
import { NECK } from '../../workers/kernels/rooms.ts';
import { softThreshold, toneTable } from '../../workers/kernels/tone-table.ts';
import { type Measured, measure } from './measure.ts';
import { loadOpenCv, matOf } from './opencv.ts';
import { demoLine, sharedLabels, sharedPlane, tiled } from './pictures.ts';

const PPI = 600;
const GAP_MM = 0.5;
const TUCK_MM = 1;
const LINE = 128;

export interface ChainRow {
  regions: number;
  megapixels: number;
  ours: Measured;
  theirs: Measured;
}

/** Grey to labelled map, one thread: our whole chain beside OpenCV's Otsu, distance, components and watershed. */
export async function chainRows(): Promise<ChainRow[]> {
  const rows: ChainRow[] = [];
  for (const tiles of [1, 2]) {
    const line = tiled(await demoLine(PPI / tiles), tiles);
    const chain = ourChain(line);
    const regions = chain();
    const ours = await measure(chain);
    rows.push({
      regions,
      megapixels: (line.width * line.height) / 1e6,
      ours,
      theirs: await measure(await theirChain(line)),
    });
  }
  return rows;
}

function ourChain(line: Plane): () => number {
  const { width, height, data } = line;
  const pixels = width * height;
  const half = (mmToPx(GAP_MM, PPI) + 1) / 2;
  const limit2 = Math.floor((half / NECK) ** 2) + 1;
  const tuck = mmToPx(TUCK_MM, PPI);
  const parted = sharedPlane(width, height);
  const columns = new Uint16Array(new SharedArrayBuffer(pixels * 2));
  const distance2 = new Uint16Array(new SharedArrayBuffer(pixels * 2));
  const zones = sharedPlane(width, height).data;
  const labels = sharedLabels(pixels);
  const out = sharedLabels(pixels);
  if (limit2 >= FAR) throw new Error('the gap of this benchmark is too wide for 16 bits');
  const distances = (lowest: number, highest: number, limit: number, framed: boolean) => {
    for (let x = 0; x < width; x += 256)
      columnDistance(
        { data: parted.data, width, height, lowest, highest, limit, framed, out: columns },
        x,
        Math.min(width, x + 256),
      );
  };
  return () => {
    toneTable({ from: line, to: parted, table: softThreshold(otsu(histogram({ data })), 0) }, 0, height);
    distances(LINE, 255, Math.ceil(Math.sqrt(limit2)), true);
    nearDistance({ columns, width, near2: half * half, limit2, distance2, zones }, 0, height);
    const { count, roomOf } = findRooms({ distance2, zones, width, height, labels });
    distances(0, LINE - 1, Math.ceil(tuck), false);
    grow({ labels, names: roomOf, columns, width, height, reach2: tuck * tuck, out }, 0, height);
    return count;
  };
}

async function theirChain(line: Plane): Promise<() => void> {
  const { cv } = await loadOpenCv();
  const grey = matOf(cv, line, true);
  const [free, distance, sure, markers, colour] = Array.from({ length: 5 }, () => new cv.Mat()) as [
    InstanceType<typeof cv.Mat>,
    InstanceType<typeof cv.Mat>,
    InstanceType<typeof cv.Mat>,
    InstanceType<typeof cv.Mat>,
    InstanceType<typeof cv.Mat>,
  ];
  cv.cvtColor(grey, colour, cv.COLOR_GRAY2BGR);
  const half = (mmToPx(GAP_MM, PPI) + 1) / 2;
  return () => {
    cv.threshold(grey, free, 0, 255, cv.THRESH_BINARY | cv.THRESH_OTSU);
    cv.distanceTransform(free, distance, cv.DIST_L2, cv.DIST_MASK_PRECISE);
    cv.threshold(distance, distance, half, 255, cv.THRESH_BINARY);
    distance.convertTo(sure, cv.CV_8U);
    cv.connectedComponents(sure, markers, 4, cv.CV_32S);
    cv.watershed(colour, markers);
  };
}
