import type { Picture } from '../../../workers/client.ts';
import { jobStore } from '../../store/job-store.ts';
import { resultsStore } from '../../store/results-store.ts';
import { type FilesState, filesStore, say, setFiles } from './files-store.ts';
import { isSaved } from './is-saved.ts';
import { firstTime, keepJob, type Snapshot, snapshotOf, tidyVault } from './keep.ts';
import { pngOf } from './small-picture.ts';
import { files as texts } from './strings.ts';

/** How long the document must rest before it is kept, ms. */
const REST_MS = 800;

/**
 * Keeps the document in this browser whenever it has rested, and at once when the page or the document is left, until
 * the returned function is called. That the browser keeps nothing is told once.
 */
export function startAutosave(): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let writing = Promise.resolve();
  let told = '';
  let drawn: Picture | null = null;

  const write = async (snapshot: Snapshot, picture: Picture | null) => {
    try {
      if (picture && picture !== drawn) snapshot.record.thumbnail = await pngOf(picture);
      await keepJob(snapshot);
      drawn = picture;
      told = '';
      if (filesStore.getState().id === snapshot.record.id) setFiles({ kept: 'yes' });
      if (await firstTime('asked to persist')) void navigator.storage?.persist?.();
      await tidyVault();
    } catch (error) {
      const sentence = isQuota(error) ? texts.quota : texts.notKept;
      setFiles({ kept: 'no' });
      if (sentence !== told) say(sentence);
      told = sentence;
    }
  };

  const keep = (withPicture: boolean, place: FilesState = filesStore.getState()) => {
    clearTimeout(timer);
    timer = undefined;
    const { job, files } = jobStore.getState();
    const { id, handle, saved, example } = place;
    if (!job || id === '' || isSaved(job, example)) return;
    const rest = { id, handle, inFile: isSaved(job, saved), savedAt: Date.now(), thumbnail: null };
    const snapshot = snapshotOf(job, files, rest);
    const picture = withPicture ? (resultsStore.getState().thumbnails.get(job.colourway) ?? null) : null;
    writing = writing.then(() => write(snapshot, picture));
  };

  const later = () => {
    clearTimeout(timer);
    timer = setTimeout(() => keep(true), REST_MS);
  };
  const leaving = () => {
    if (timer !== undefined && document.visibilityState === 'hidden') keep(false);
  };

  const losing = (event: BeforeUnloadEvent) => {
    const { kept, saved } = filesStore.getState();
    if (kept === 'no' && !isSaved(jobStore.getState().job, saved)) event.preventDefault();
  };

  const stops = [
    jobStore.subscribe((state, before) => state.job !== before.job && later()),
    filesStore.subscribe((state, before) => {
      if (state.id !== before.id && timer !== undefined) keep(false, before);
      else if (state.saved !== before.saved) later();
    }),
    resultsStore.subscribe((state, before) => state.thumbnails !== before.thumbnails && later()),
  ];
  document.addEventListener('visibilitychange', leaving);
  window.addEventListener('beforeunload', losing);
  if (jobStore.getState().job) later();
  return () => {
    for (const stop of stops) stop();
    document.removeEventListener('visibilitychange', leaving);
    window.removeEventListener('beforeunload', losing);
    if (timer !== undefined) keep(false);
  };
}

function isQuota(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'QuotaExceededError';
}
