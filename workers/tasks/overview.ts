import type { Complaint } from '../../src/graph/complaint.ts';
import type { Job } from '../../src/graph/job.ts';
import { lintGraph } from '../../src/graph/wiring.ts';
import { nodeKinds } from '../../src/nodes/registry.ts';
import type { PlatesValue } from '../engine/values.ts';
import { feeding, firstOf } from './job-ends.ts';
import { mm3 } from './report-parts.ts';
import type { TaskContext } from './task.ts';

export interface OverviewInput {
  job: Job;
  /** n for pictures of 1/n each way: thumbnails, and the coverage is measured on them. */
  scale: number;
}

/** A small grey picture: 0 paper .. 255 solid. */
export interface PlateThumbnail {
  width: number;
  height: number;
  coverage: Uint8Array<ArrayBuffer>;
}

export interface PlateOverview {
  id: string;
  /** Name of its ink. */
  ink: string;
  order: number;
  pass: number;
  coveragePercent: number;
  thumbnail: PlateThumbnail;
}

/** The plates as they enter the Press file, and what the steps to them had to say. */
export interface Overview {
  plates: PlateOverview[];
  complaints: Complaint[];
  /** Milliseconds by node, of what had to be computed. */
  timings: Record<string, number>;
}

/** Plates in small, for lists. A job whose Press file has no plates has none. */
export async function overview(input: OverviewInput, context: TaskContext): Promise<Overview> {
  const { engine, flag, onProgress } = context;
  const { job, scale } = input;
  const end = feeding(job, firstOf(job, 'press-file'), 'plates');
  const lint = lintGraph(job.graph, nodeKinds);
  if (!end) return { plates: [], complaints: lint, timings: {} };
  const run = await engine.evaluate({ job, targets: [end], scale }, flag, onProgress);
  const { tools, tidy } = engine.toolBox(flag);
  try {
    const plates = (run.values[0] as PlatesValue).plates.map(async ({ id, ink, order, pass, coverage }) => {
      const mean = await tools.whole('mean', { data: coverage.data });
      const { width, height, data } = coverage;
      const thumbnail = { width, height, coverage: new Uint8Array(data) };
      return { id, ink: ink.name, order, pass, coveragePercent: mm3((mean * 100) / 255), thumbnail };
    });
    return {
      plates: await Promise.all(plates),
      complaints: [...run.complaints, ...lint],
      timings: run.timings,
    };
  } finally {
    tidy();
    run.release();
  }
}
