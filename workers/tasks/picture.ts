import type { Complaint } from '../../src/graph/complaint.ts';
import { BadInput } from '../../src/graph/complaint.ts';
import type { End, Job } from '../../src/graph/job.ts';
import type { ProofValue } from '../engine/values.ts';
import { firstOf } from './job-ends.ts';
import type { TaskContext } from './task.ts';

export interface PictureInput {
  job: Job;
  /** 1 for full, n for 1/n each way. */
  scale: number;
}

export interface Picture {
  width: number;
  height: number;
  ppi: number;
  /** RGBA, sRGB. */
  pixels: Uint8ClampedArray<ArrayBuffer>;
  complaints: Complaint[];
}

/**
 * The proof as pixels to show.
 *
 * @throws BadInput when the job has no Proof node
 */
export async function picture(input: PictureInput, context: TaskContext): Promise<Picture> {
  const { engine, flag, onProgress } = context;
  const node = firstOf(input.job, 'proof');
  if (!node) throw new BadInput('the job has no Proof node to show');
  const targets: End[] = [{ node, port: 'proof' }];
  const run = await engine.evaluate({ job: input.job, targets, scale: input.scale }, flag, onProgress);
  try {
    const { width, height, ppi, pixels } = run.values[0] as ProofValue;
    return { width, height, ppi, pixels: new Uint8ClampedArray(pixels), complaints: run.complaints };
  } finally {
    run.release();
  }
}
