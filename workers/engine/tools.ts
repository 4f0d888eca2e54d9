import { BadInput, type Complaint } from '../../src/graph/complaint.ts';
import type { LabelPlane, Plane } from '../kernels/plane.ts';
import type { CancelFlag } from './cancel.ts';
import type { Crew } from './crew.ts';
import type { Tools } from './evaluation.ts';
import type { PlanePool } from './pool.ts';

/** A file with the name it came by. */
export interface Asset {
  name: string;
  bytes: Uint8Array;
}

export interface ToolBox {
  tools: Tools;
  complaints: Complaint[];
  /** Lets go of every buffer that was taken; what the step gives out must be held by then. */
  tidy(): void;
}

/** Tools for one step. */
export function toolBox(
  pool: PlanePool,
  crew: Crew,
  assets: ReadonlyMap<string, Asset>,
  flag: CancelFlag,
): ToolBox {
  const taken = new Set<SharedArrayBuffer>();
  const complaints: Complaint[] = [];
  const take = (bytes: number): SharedArrayBuffer => {
    const buffer = pool.take(bytes);
    taken.add(buffer);
    return buffer;
  };
  const release = (buffer: SharedArrayBuffer): void => {
    if (taken.delete(buffer)) pool.release(buffer);
  };
  const tools: Tools = {
    bytes: (length) => new Uint8Array(take(length)),
    plane: (width, height): Plane => ({ width, height, data: new Uint8Array(take(width * height)) }),
    labels: (width, height): LabelPlane => ({
      width,
      height,
      data: new Uint32Array(take(width * height * 4)),
    }),
    free: (view) => release(view.buffer),
    bands: (name, args, extent) => crew.bands(name, args, extent, flag),
    whole: (name, args) => crew.whole(name, args, flag),
    alone: (name, args, limitMs) => crew.alone(name, args, flag, limitMs),
    adopt: (buffer) => {
      pool.adopt(buffer);
      taken.add(buffer);
    },
    asset: (hash) => {
      const asset = assets.get(hash);
      if (!asset)
        throw new BadInput(`the file ${hash.slice(0, 12)}... of this job is missing; add the drawing again`);
      return asset;
    },
    complain: (complaint) => complaints.push(complaint),
    part: (_name, _settings, make) => make(),
  };
  const tidy = (): void => {
    for (const buffer of [...taken]) release(buffer);
  };
  return { tools, complaints, tidy };
}
