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
    return { width, height, ppi, pixels: opaque(pixels), complaints: run.complaints };
  } finally {
    run.release();
  }
}

/** RGB as RGBA. */
function opaque(rgb: Uint8Array): Uint8ClampedArray<ArrayBuffer> {
  const rgba = new Uint8ClampedArray((rgb.length / 3) * 4);
  for (let from = 0, to = 0; from < rgb.length; from += 3, to += 4) {
    rgba[to] = rgb[from]!;
    rgba[to + 1] = rgb[from + 1]!;
    rgba[to + 2] = rgb[from + 2]!;
    rgba[to + 3] = 255;
  }
  return rgba;
}
