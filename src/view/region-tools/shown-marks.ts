import type { RegionMap } from '../../../workers/client.ts';
import type { RegionEdit } from '../../graph/region-edits.ts';
import { useJobState, useResults } from '../../store/hooks.ts';
import { jobStore } from '../../store/job-store.ts';
import { handEdits } from '../../store/region-edits.ts';
import { resultsStore } from '../../store/results-store.ts';
import { type Mark, marksOf } from './marks.ts';

const NONE: readonly Mark[] = [];

let last: { map: RegionMap; edits: readonly RegionEdit[]; marks: readonly Mark[] } | null = null;

function marksFor(map: RegionMap | null, edits: readonly RegionEdit[] | null): readonly Mark[] {
  if (!map || !edits) return NONE;
  if (last?.map !== map || last.edits !== edits) last = { map, edits, marks: marksOf(map, edits) };
  return last.marks;
}

/** Walls, gaps and hand edits of the document as it stands. */
export function shownMarks(): readonly Mark[] {
  const { job } = jobStore.getState();
  return marksFor(resultsStore.getState().regions, job && handEdits(job));
}

export function useMarks(): readonly Mark[] {
  const map = useResults((state) => state.regions);
  const edits = useJobState(({ job }) => job && handEdits(job));
  return marksFor(map, edits);
}
