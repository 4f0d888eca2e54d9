import type { Complaint } from '../../../src/graph/complaint.ts';
import type { Tools } from '../../../workers/engine/evaluation.ts';
import { bandKernels, wholeKernels } from '../../../workers/kernels/index.ts';
import type { LabelPlane, Plane } from '../../../workers/kernels/plane.ts';

/** Tools that do all pixel work at once, in this thread: to measure a step, or run it often. */
export function localTools(): { tools: Tools; complaints: Complaint[] } {
  const complaints: Complaint[] = [];
  const tools: Tools = {
    bytes: (length) => new Uint8Array(new SharedArrayBuffer(length)),
    plane: (width, height): Plane => ({
      width,
      height,
      data: new Uint8Array(new SharedArrayBuffer(width * height)),
    }),
    labels: (width, height): LabelPlane => ({
      width,
      height,
      data: new Uint32Array(new SharedArrayBuffer(width * height * 4)),
    }),
    free: () => {},
    bands: async (name, args, extent) => (bandKernels[name] as Kernel)(args, 0, extent),
    whole: async (name, args) => (wholeKernels as Record<string, Kernel>)[name]!(args) as never,
    alone: () => Promise.reject(new Error('no files here')),
    adopt: () => {},
    asset: () => {
      throw new Error('no files here');
    },
    complain: (complaint) => complaints.push(complaint),
    part: (_name, _settings, make) => make(),
  };
  return { tools, complaints };
}

type Kernel = (args: unknown, from?: number, to?: number) => void;
