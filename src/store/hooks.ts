import { useStore } from 'zustand';
import type { Job } from '../graph/job.ts';
import { type JobState, jobStore } from './job-store.ts';
import { type Results, resultsStore } from './results-store.ts';
import { type ViewState, viewStore } from './view-store.ts';

export function useJobState<Part>(select: (state: JobState) => Part): Part {
  return useStore(jobStore, select);
}

/** A part of the open document. Only for components that are shown while one is open. */
export function useJob<Part>(select: (job: Job) => Part): Part {
  return useStore(jobStore, ({ job }) => {
    if (!job) throw new Error('no job is open');
    return select(job);
  });
}

export function useView<Part>(select: (state: ViewState) => Part): Part {
  return useStore(viewStore, select);
}

export function useResults<Part>(select: (state: Results) => Part): Part {
  return useStore(resultsStore, select);
}
