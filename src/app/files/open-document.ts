import type { Asset } from '../../../workers/client.ts';
import type { Job } from '../../graph/job.ts';
import { openJob } from '../../store/job-store.ts';
import { resultsStore } from '../../store/results-store.ts';
import { setView } from '../../store/view-store.ts';
import { setFiles } from './files-store.ts';

/** A document with its files, and where it lives. */
export interface Opened {
  job: Job;
  files: { hash: string; asset: Asset }[];
  /** Where the browser keeps it; a new one when left out. */
  id?: string;
  handle?: FileSystemFileHandle | null;
  /** Whether a file holds the document as it is. */
  inFile?: boolean;
  /** Whether it is the example as it comes. */
  isExample?: boolean;
}

/** Puts a document on the table; what was shown of the last one goes. */
export function openDocument(opened: Opened): void {
  const { job, files, id, handle = null, inFile = false, isExample = false } = opened;
  setFiles({
    id: id ?? crypto.randomUUID(),
    handle,
    drawing: null,
    saved: inFile ? job : null,
    example: isExample ? job : null,
    notice: null,
    kept: 'unknown',
  });
  setView({ showing: { view: 'proof' }, inHand: null, node: null, hovered: null, chosen: [] });
  resultsStore.setState({
    picture: null,
    regions: null,
    overview: null,
    thumbnails: new Map(),
    failure: null,
    seconds: null,
  });
  openJob(job, files);
}
