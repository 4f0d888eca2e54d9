import { Cancelled } from '../../../workers/client.ts';
import { parseStyle, STYLE_FORMAT } from '../../graph/style.ts';
import { nodeKinds } from '../../nodes/registry.ts';
import { jobStore } from '../../store/job-store.ts';
import { addRough } from '../panels/rough/rough-edits.ts';
import { styleTexts } from '../styles/strings.ts';
import { keepStyle } from '../styles/styles-store.ts';
import type { Chosen } from './browser-files.ts';
import { ask, filesStore, say, setFiles } from './files-store.ts';
import { openDocument } from './open-document.ts';
import { newFromDrawing, replaceDrawing } from './open-drawing.ts';
import { kindOfFile, readJobFile } from './read-job-file.ts';
import { files as texts } from './strings.ts';

/** How files came: dropped on the window, chosen for a new job, chosen to be opened, or changed on disk. */
export type Way = 'dropped' | 'new' | 'open' | 'changed';

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
    if (job && isStyle(job.bytes)) await takeStyle(job);
    else if (job) takeJob(job, read);
    else await takeDrawing(read[0]!, way);
  } catch (error) {
    if (!(error instanceof Cancelled)) say(texts.cannotOpen(file, plainReason(error, file)));
  } finally {
    setFiles({ busy: null });
  }
}

/** Whether a file that is no picture is a house style. */
function isStyle(bytes: Uint8Array): boolean {
  return new TextDecoder().decode(bytes.slice(0, 400)).includes(`"${STYLE_FORMAT}"`);
}

async function takeStyle({ bytes }: Read): Promise<void> {
  const style = parseStyle(new TextDecoder().decode(bytes), nodeKinds);
  await keepStyle(style);
  say(styleTexts.kept(style.name));
}

function takeJob({ file, bytes, handle }: Read, all: readonly Read[]): void {
  const beside = new Map(all.map((each) => [each.file.name, each.bytes]));
  const read = readJobFile(bytes, beside);
  const packed = kindOfFile(bytes) === 'archive';
  const writable = packed && file.name.endsWith('.keyblock');
  openDocument({ ...read, handle: writable ? handle : null, inFile: writable });
}

async function takeDrawing({ file, bytes, handle }: Read, way: Way): Promise<void> {
  const { client } = filesStore.getState();
  if (!client) throw new Error(texts.noEngine);
  const asks = way === 'dropped' && jobStore.getState().job !== null;
  const what = asks ? await ask('dropped', { file: file.name }) : way === 'changed' ? 'replace' : 'new';
  if (what === null) return;
  if (what === 'rough') return addRough({ name: file.name, bytes });
  const stop = new AbortController();
  setFiles({ busy: { text: texts.opening(file.name), cancel: () => stop.abort() } });
  const cancel = () => stop.abort();
  const drawing = { asset: { name: file.name, bytes }, client, signal: stop.signal, cancel };
  await (what === 'new' ? newFromDrawing(drawing) : replaceDrawing(drawing));
  setFiles({ drawing: handle && { handle, changed: file.lastModified } });
}

/** Why, without the file's name, which the sentence begins with. */
function plainReason(error: unknown, file: string): string {
  const { message } = error as Error;
  return message.startsWith(`${file}: `) ? message.slice(file.length + 2) : message;
}
