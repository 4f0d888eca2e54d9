import { createStore } from 'zustand/vanilla';
import type { Asset } from '../../workers/client.ts';
import type { Job } from '../graph/job.ts';
import type { RegionRegister } from '../graph/register.ts';

/** One change that can be undone. Documents share what did not change, so a step costs little. */
export interface Step {
  /** What the person did, as the undo list shows it. */
  name: string;
  before: Job;
  after: Job;
  /** Steps of one gesture (a slider that moves) carry the same key and become one. */
  gesture: string | null;
}

export interface JobState {
  /** The open document; null before one is opened. */
  job: Job | null;
  /** The document's files by hash, those of undone steps included. */
  files: ReadonlyMap<string, Asset>;
  past: readonly Step[];
  future: readonly Step[];
  /** Counts up whenever another document is opened. */
  opened: number;
}

export const jobStore = createStore<JobState>(() => ({
  job: null,
  files: new Map(),
  past: [],
  future: [],
  opened: 0,
}));

/** Opens a document with its files; the history starts anew. */
export function openJob(job: Job, files: readonly { hash: string; asset: Asset }[]): void {
  jobStore.setState(({ opened }) => ({
    job,
    files: new Map(files.map(({ hash, asset }) => [hash, asset])),
    past: [],
    future: [],
    opened: opened + 1,
  }));
}

/**
 * Changes the document as one named step; does nothing when the change gives back the document it got.
 *
 * @param gesture steps that follow one another under the same key are undone together
 */
export function edit(name: string, change: (job: Job) => Job, gesture: string | null = null): void {
  jobStore.setState(({ job, past }) => {
    if (!job) return {};
    const after = change(job);
    if (after === job) return {};
    const last = past.at(-1);
    const joins = gesture !== null && last?.gesture === gesture;
    const step = { name, before: joins ? last.before : job, after, gesture };
    return { job: after, past: [...(joins ? past.slice(0, -1) : past), step], future: [] };
  });
}

/** Takes in a file that the next edit will name. */
export function addFile(hash: string, asset: Asset): void {
  jobStore.setState(({ files }) => ({ files: new Map(files).set(hash, asset) }));
}

export function undo(): void {
  jobStore.setState(({ past, future }) => {
    const step = past.at(-1);
    if (!step) return {};
    return { job: step.before, past: past.slice(0, -1), future: [step, ...future] };
  });
}

export function redo(): void {
  jobStore.setState(({ past, future }) => {
    const [step, ...rest] = future;
    if (!step) return {};
    return { job: step.after, past: [...past, step], future: rest };
  });
}

/** Remembers the regions that were found. No step of its own: it only lets regions keep their ids. */
export function remember(register: RegionRegister): void {
  jobStore.setState(({ job }) => (job ? { job: { ...job, register } } : {}));
}
