import type { aloneJobs, fileJobs } from '../files/jobs.ts';
import type { bandKernels, wholeKernels } from '../kernels/index.ts';
import type { CancelFlag } from './cancel.ts';

type Bands = typeof bandKernels;
type Wholes = typeof wholeKernels;
type Files = typeof fileJobs & typeof aloneJobs;

export type BandName = keyof Bands;
export type BandArgs<Name extends BandName> = Parameters<Bands[Name]>[0];

/** Work that one worker does in one go: kernels over a whole picture, and making files. */
export type WholeName = keyof Wholes | keyof typeof fileJobs;
/** Work that gets a worker of its own. */
export type AloneName = keyof typeof aloneJobs;
type WholeJob<Name extends WholeName | AloneName> = Name extends keyof Wholes
  ? Wholes[Name]
  : Name extends keyof Files
    ? Files[Name]
    : never;
export type WholeArgs<Name extends WholeName | AloneName> = Parameters<WholeJob<Name>>[0];
export type WholeResult<Name extends WholeName | AloneName> = Awaited<ReturnType<WholeJob<Name>>>;

/** What every worker of the crew does. */
export interface CrewApi {
  /**
   * Takes slices of `sliceSize` rows from the shared ticket until none is left or the flag is raised.
   */
  bands(
    name: BandName,
    args: unknown,
    extent: number,
    sliceSize: number,
    ticket: Int32Array<SharedArrayBuffer>,
    flag: CancelFlag,
  ): void;
  whole(name: WholeName | AloneName, args: unknown): unknown;
}
