import { Cancelled } from '../../../workers/client.ts';
import { readInkSet } from '../../docket/ink-edits.ts';
import { hashBytes } from '../../graph/keys.ts';
import { jobInStyle, type Style } from '../../graph/style.ts';
import { chooseFiles } from '../files/browser-files.ts';
import { filesStore, say, setFiles } from '../files/files-store.ts';
import { openDocument } from '../files/open-document.ts';
import { widthOf } from '../files/open-drawing.ts';
import { files as fileTexts } from '../files/strings.ts';
import { readShelf, shelfStore } from '../inks/shelf-store.ts';
import { styleTexts as texts } from './strings.ts';

/** Lets the person choose a drawing and opens it in a style. */
export async function newInStyle(style: Style): Promise<void> {
  const [chosen] = await chooseFiles('drawing');
  const { client } = filesStore.getState();
  if (!chosen) return;
  if (!client) return say(fileTexts.noEngine);
  const asset = { name: chosen.file.name, bytes: new Uint8Array(await chosen.file.arrayBuffer()) };
  const hash = hashBytes(asset.bytes);
  const stop = new AbortController();
  setFiles({ busy: { text: texts.working(asset.name), cancel: () => stop.abort() } });
  try {
    const plain = jobInStyle(style, asset.name, hash);
    const width = await widthOf(plain, { asset, client, signal: stop.signal }, null);
    if (width === null) return;
    const sized = width === 'known' ? plain : jobInStyle(style, asset.name, hash, { widthMm: width });
    setFiles({ busy: { text: texts.working(asset.name), cancel: () => stop.abort() } });
    const job = await client.run(
      'styleRecipes',
      { job: sized, rules: style.rules, seed: 1 },
      { signal: stop.signal },
    );
    openDocument({ job, files: [{ hash, asset }] });
    await tellMissing(style);
  } catch (error) {
    if (!(error instanceof Cancelled)) say(fileTexts.cannotOpen(asset.name, (error as Error).message));
  } finally {
    setFiles({ busy: null });
  }
}

/** Says which inks of a style are not on the shelf. */
async function tellMissing(style: Style): Promise<void> {
  await readShelf();
  const shelf = new Set(shelfStore.getState().shelf?.inks.map(({ name }) => name));
  const set = readInkSet(style.graph.nodes.find(({ kind }) => kind === 'ink-set'));
  const missing = set?.inks.map(({ name }) => name).filter((name) => !shelf.has(name)) ?? [];
  if (missing.length > 0) say(texts.missing(missing));
}
