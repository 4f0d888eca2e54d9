import { BadInput } from '../../src/graph/complaint.ts';
import type { Job } from '../../src/graph/job.ts';
import type { DrawingValue } from '../engine/values.ts';
import { feeding, firstOf } from './job-ends.ts';
import type { TaskContext } from './task.ts';

export interface Ghost {
  width: number;
  height: number;
  /** Printed size of the old drawing. */
  mm: [number, number];
  /** RGBA: the line in one colour, as opaque as it covers. */
  pixels: Uint8ClampedArray<ArrayBuffer>;
}

const COLOUR = [143, 47, 31] as const;
const OPACITY = 0.75;

/**
 * The lines a job had before its last redraw, to be laid over the new ones.
 *
 * @param input.scale 1 for full, n for 1/n each way
 * @throws BadInput when there is none, or it cannot be read any more
 */
export async function ghost(
  { job, scale }: { job: Job; scale: number },
  { engine, flag, onProgress }: TaskContext,
): Promise<Ghost> {
  const [before] = job.redraw?.earlier ?? [];
  if (!before) throw new BadInput('the drawing was not changed, so there are no old lines to show');
  const nodes = job.graph.nodes.map((node) =>
    node.kind === 'line-drawing'
      ? { ...node, settings: { ...node.settings, ...before.size, asset: before.drawing } }
      : node,
  );
  const old = { ...job, graph: { ...job.graph, nodes } };
  const end = feeding(old, firstOf(old, 'closed-regions'), 'drawing');
  if (!end) throw new BadInput('the job has no Closed regions node with a drawing wired to it');
  const run = await engine.evaluate({ job: old, targets: [end], scale }, flag, onProgress);
  try {
    const { line, mm } = run.values[0] as DrawingValue;
    const small = Math.max(1, Math.ceil(Math.max(line.width, line.height) / 1600));
    const [width, height] = [Math.floor(line.width / small), Math.floor(line.height / small)];
    const pixels = new Uint8ClampedArray(width * height * 4);
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) {
        const at = (y * width + x) * 4;
        pixels.set(COLOUR, at);
        pixels[at + 3] = line.data[y * small * line.width + x * small]! * OPACITY;
      }
    return { width, height, mm: [mm[0], mm[1]], pixels };
  } finally {
    run.release();
  }
}
