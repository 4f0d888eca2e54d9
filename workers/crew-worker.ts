import { exposeHere } from '#host/here';
import { isRaised } from './engine/cancel.ts';
import type { CrewApi } from './engine/crew-api.ts';
import { aloneJobs, fileJobs } from './files/jobs.ts';
import { bandKernels, wholeKernels } from './kernels/index.ts';

const wholeJobs = { ...wholeKernels, ...fileJobs, ...aloneJobs };

const api: CrewApi = {
  bands(name, args, extent, sliceSize, ticket, flag) {
    const kernel = bandKernels[name] as (args: unknown, from: number, to: number) => void;
    while (!isRaised(flag)) {
      const from = Atomics.add(ticket, 0, 1) * sliceSize;
      if (from >= extent) return;
      kernel(args, from, Math.min(extent, from + sliceSize));
    }
  },
  whole(name, args) {
    const job = wholeJobs[name] as (args: unknown) => unknown;
    return job(args);
  },
};

exposeHere(api);
