import { createStore } from 'zustand/vanilla';
import type { Ghost, Overview, Picture, ProgressReport, RegionMap } from '../../workers/client.ts';
import type { Graph } from '../graph/job.ts';

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
  /** The wiring that the map was made for. */
  mappedFor: Graph | null;
  /** Plates and nodes: coverage, thumbnails, times, complaints. */
  overview: Overview | null;
  /** Small proofs by colourway id. */
  thumbnails: ReadonlyMap<string, Picture>;
  /** The lines before the last redraw. */
  ghost: Ghost | null;
  running: Running | null;
  /** Why the document cannot be shown, as a sentence; the last good results stay. */
  failure: string | null;
  /** Seconds the last fine picture took. */
  seconds: number | null;
  /** Shared memory in use, bytes. */
  liveBytes: number;
}

const NOTHING: Omit<Results, 'running' | 'liveBytes'> = {
  picture: null,
  regions: null,
  mappedFor: null,
  overview: null,
  thumbnails: new Map(),
  ghost: null,
  failure: null,
  seconds: null,
};

export const resultsStore = createStore<Results>(() => ({ ...NOTHING, running: null, liveBytes: 0 }));

/** Forgets what belonged to another document. */
export function clearResults(): void {
  resultsStore.setState(NOTHING);
}
