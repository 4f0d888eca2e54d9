import { BadInput, type Complaint } from '../../src/graph/complaint.ts';
import type { Job } from '../../src/graph/job.ts';
import { assignIds, type RegionRegister } from '../../src/graph/register.ts';
import type { OpenGap, RegionsValue } from '../engine/values.ts';
import { firstOf } from './job-ends.ts';
import type { TaskContext } from './task.ts';

export interface RegionMapInput {
  job: Job;
  /** 1 for full, n for 1/n each way. */
  scale: number;
}

export interface MappedRegion {
  id: string;
  areaMm2: number;
  anchorMm: [number, number];
  boxMm: [number, number, number, number];
  touchesFrame: boolean;
  /** Id of the region that wholly surrounds this one. */
  inside: string | null;
}

/** An opening that was closed, or had been until the person took the wall down. */
export interface MappedWall {
  widthMm: number;
  placeMm: [number, number];
  endsMm: [[number, number], [number, number]];
  between: [string, string];
  opened: boolean;
}

/** Which region lies where. */
export interface RegionMap {
  width: number;
  height: number;
  ppi: number;
  /** Printed size, mm. */
  mm: [number, number];
  /** One label a pixel, 0 none; `regions[label - 1]`. */
  labels: Uint32Array<ArrayBuffer>;
  regions: MappedRegion[];
  walls: MappedWall[];
  /** Openings that are wider than the gap: not closed. */
  openGaps: readonly OpenGap[];
  /** What the job should remember, so that these regions keep their ids. */
  register: RegionRegister;
  complaints: Complaint[];
}

/**
 * The regions as a map to look things up in.
 *
 * @throws BadInput when the job has no Closed regions node
 */
export async function regionMap(input: RegionMapInput, context: TaskContext): Promise<RegionMap> {
  const { engine, flag, onProgress } = context;
  const { job, scale } = input;
  const node = firstOf(job, 'closed-regions');
  if (!node) throw new BadInput('the job has no Closed regions node');
  const targets = [{ node, port: 'regions' }];
  const run = await engine.evaluate({ job, targets, scale }, flag, onProgress);
  try {
    const value = run.values[0] as RegionsValue;
    const { width, height, data } = value.labels;
    return {
      width,
      height,
      ppi: value.ppi,
      mm: [value.mm[0], value.mm[1]],
      labels: new Uint32Array(data),
      regions: value.table.map(({ areaMm2, anchorMm, boxMm, touchesFrame, inside }, i) => ({
        id: value.ids[i]!,
        areaMm2,
        anchorMm,
        boxMm,
        touchesFrame,
        inside: inside === null ? null : value.ids[inside - 1]!,
      })),
      walls: value.walls.map(({ widthMm, placeMm, endsMm, between: [a, b], opened }) => ({
        widthMm,
        placeMm,
        endsMm,
        between: [value.ids[a - 1]!, value.ids[b - 1]!],
        opened,
      })),
      openGaps: value.openGaps,
      register: assignIds(value.table, job.register).register,
      complaints: run.complaints,
    };
  } finally {
    run.release();
  }
}
