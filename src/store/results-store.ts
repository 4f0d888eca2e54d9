import { createStore } from 'zustand/vanilla';
import type { Overview, Picture, ProgressReport, RegionMap } from '../../workers/client.ts';

/** A run that takes long enough to tell of. */
export interface Running {
  progress: ProgressReport | null;
  cancel(): void;
}

/** What the workers gave for the document as it stands; each part is null until it first came. */
export interface Results {
  /** The picture of what is shown, coarse or fine. */
  picture: Picture | null;
  /** Regions by place, to look up what lies under the pointer. */
  regions: RegionMap | null;
  /** Plates and nodes: coverage, thumbnails, times, complaints. */
  overview: Overview | null;
  /** Small proofs by colourway id. */
  thumbnails: ReadonlyMap<string, Picture>;
  running: Running | null;
  /** Why the document cannot be shown, as a sentence; the last good results stay. */
  failure: string | null;
  /** Seconds the last fine picture took. */
  seconds: number | null;
  /** Shared memory in use, bytes. */
  liveBytes: number;
}

export const resultsStore = createStore<Results>(() => ({
  picture: null,
  regions: null,
  overview: null,
  thumbnails: new Map(),
  running: null,
  failure: null,
  seconds: null,
  liveBytes: 0,
}));
