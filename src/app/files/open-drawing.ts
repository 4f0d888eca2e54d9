import type { Asset, Client } from '../../../workers/client.ts';
import type { Job } from '../../graph/job.ts';
import { hashBytes } from '../../graph/keys.ts';
import { addFile, edit, jobStore } from '../../store/job-store.ts';
import { resultsStore } from '../../store/results-store.ts';
import { setView } from '../../store/view-store.ts';
import { redrawTexts } from '../panels/redraw/strings.ts';
import { jobOfDrawing, withDrawing, withWidth } from './drawing-edits.ts';
import { ask, say, sayBriefly, setFiles } from './files-store.ts';
import { isVector, measureDrawing } from './measure-drawing.ts';
import { openDocument } from './open-document.ts';
import { files as texts } from './strings.ts';

/** A drawing that came in, and what it is looked at with. */
export interface Incoming {
  asset: Asset;
  client: Client;
  signal: AbortSignal;
  cancel(): void;
}

/** A new job around a drawing, at the size it says or the person gives. Nothing when they let it be. */
export async function newFromDrawing(incoming: Incoming): Promise<void> {
  const { asset } = incoming;
  const hash = hashBytes(asset.bytes);
  const width = await widthOf(jobOfDrawing(asset.name, hash), incoming, null);
  if (width === null) return;
  const job = jobOfDrawing(asset.name, hash);
  openDocument({ job: width === 'known' ? job : withWidth(job, width), files: [{ hash, asset }] });
}

/** Gives the open job another drawing, as one step. Nothing when the person let it be. */
export async function replaceDrawing(incoming: Incoming): Promise<void> {
  const { asset } = incoming;
  const { job, opened } = jobStore.getState();
  if (!job) return;
  const hash = hashBytes(asset.bytes);
  const printed = resultsStore.getState().regions?.mm[0] ?? null;
  const width = await widthOf(withDrawing(job, asset.name, hash), incoming, printed);
  if (width === null || jobStore.getState().opened !== opened) return;
  const { file } = withDrawing(job, asset.name, hash).assets[hash]!;
  const widthMm = width === 'known' ? undefined : width;
  const { client, signal } = incoming;
  setFiles({ busy: { text: texts.carrying(asset.name), cancel: incoming.cancel } });
  const { job: after, carry } = await client.run(
    'redraw',
    { job, drawing: { hash, file }, widthMm },
    { signal },
  );
  if (jobStore.getState().job !== job) return say(texts.changedMeanwhile);
  addFile(hash, asset);
  setView({ ghost: false });
  resultsStore.setState({ ghost: null });
  edit(texts.replaceStep, () => after);
  if (carry.complaints.some(({ code }) => code === 'other-picture')) return say(redrawTexts.otherPicture);
  const kept = carry.regions.filter(({ state }) => state === 'kept').length;
  sayBriefly(redrawTexts.done(kept, carry.regions.length - kept));
}

/** The width to set, or that it is known already; null when the person let it be. */
export async function widthOf(
  job: Job,
  { asset, client, signal }: Omit<Incoming, 'cancel'>,
  guessMm: number | null,
): Promise<number | 'known' | null> {
  await client.addAsset(asset);
  const { mm, assumed, pixels } = await measureDrawing(client, job, signal);
  if (!assumed) return 'known';
  setFiles({ busy: null });
  const guess = Math.round((guessMm ?? mm[0]) * 10) / 10;
  return ask('width', {
    file: asset.name,
    pixels: isVector(job) ? null : pixels,
    guessMm: guess,
    shape: mm[1] / mm[0],
  });
}
