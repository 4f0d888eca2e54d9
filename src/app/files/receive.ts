import { Cancelled } from '../../../workers/client.ts';
import { jobStore } from '../../store/job-store.ts';
import type { Chosen } from './browser-files.ts';
import { ask, filesStore, say, setFiles } from './files-store.ts';
import { openDocument } from './open-document.ts';
import { newFromDrawing, replaceDrawing } from './open-drawing.ts';
import { kindOfFile, readJobFile } from './read-job-file.ts';
import { files as texts } from './strings.ts';

/** How files came: dropped on the window, chosen for a new job, or chosen to be opened. */
export type Way = 'dropped' | 'new' | 'open';

interface Read extends Chosen {
  bytes: Uint8Array<ArrayBuffer>;
}

/**
 * Takes in files: a job is opened, a drawing becomes a new job or the drawing of this one. What cannot be used
 * changes nothing and is told in one sentence.
 */
export async function receive(chosen: readonly Chosen[], way: Way): Promise<void> {
  const first = chosen[0];
  if (!first) return;
  let file = first.file.name;
  setFiles({ notice: null });
  try {
    const read = await Promise.all(
      chosen.map(async (each) => ({ ...each, bytes: new Uint8Array(await each.file.arrayBuffer()) })),
    );
    const job = read.find(({ bytes }) => kindOfFile(bytes) !== 'picture');
    file = (job ?? first).file.name;
    if (job) takeJob(job, read);
    else await takeDrawing(read[0]!, way);
  } catch (error) {
    if (!(error instanceof Cancelled)) say(texts.cannotOpen(file, plainReason(error, file)));
  } finally {
    setFiles({ busy: null });
  }
}

function takeJob({ file, bytes, handle }: Read, all: readonly Read[]): void {
  const beside = new Map(all.map((each) => [each.file.name, each.bytes]));
  const read = readJobFile(bytes, beside);
  const packed = kindOfFile(bytes) === 'archive';
  const writable = packed && file.name.endsWith('.keyblock');
  openDocument({ ...read, handle: writable ? handle : null, inFile: writable });
}

async function takeDrawing({ file, bytes }: Read, way: Way): Promise<void> {
  const { client } = filesStore.getState();
  if (!client) throw new Error(texts.noEngine);
  const asks = way === 'dropped' && jobStore.getState().job !== null;
  const what = asks ? await ask('dropped', { file: file.name }) : 'new';
  if (what === null) return;
  const stop = new AbortController();
  setFiles({ busy: { text: texts.opening(file.name), cancel: () => stop.abort() } });
  const drawing = { asset: { name: file.name, bytes }, client, signal: stop.signal };
  await (what === 'new' ? newFromDrawing(drawing) : replaceDrawing(drawing));
}

/** Why, without the file's name, which the sentence begins with. */
function plainReason(error: unknown, file: string): string {
  const { message } = error as Error;
  return message.startsWith(`${file}: `) ? message.slice(file.length + 2) : message;
}
