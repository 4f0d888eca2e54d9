import { readFile } from 'node:fs/promises';
import { join, parse } from 'node:path';
import type { MadeFile } from '../../workers/client.ts';
import { freshFileName } from '../graph/assets.ts';
import { type Batch, type BatchItem, batchItemSchema } from '../graph/batch.ts';
import { jsonFile, writeFiles } from './write-files.ts';

/** Written last into a folder: it stands there only when all the rest does. */
const ITEM = 'item.json';

/** A folder for each drawing, named after it; drawings of one name get numbers. */
export function folderNames(drawings: readonly string[]): Map<string, string> {
  const names = new Map<string, string>();
  for (const drawing of drawings)
    names.set(drawing, freshFileName(parse(drawing).name || 'drawing', names.values()));
  return names;
}

/** What was made in a folder before; null where nothing was, or not wholly. */
export async function itemOf(folder: string): Promise<BatchItem | null> {
  try {
    const read = batchItemSchema.safeParse(JSON.parse(await readFile(join(folder, ITEM), 'utf8')));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

/** Writes a drawing's files, and last of all what became of it. */
export async function writeItem(folder: string, item: BatchItem, files: readonly MadeFile[]): Promise<void> {
  await writeFiles(folder, files);
  await writeFiles(folder, [jsonFile(ITEM, item)]);
}

/** All drawings of a batch in their order: what this run made, and what other runs into the same folder made. */
export async function gather(
  out: string,
  style: string,
  drawings: readonly string[],
  made: readonly BatchItem[],
): Promise<Batch> {
  const names = folderNames(drawings);
  const items: BatchItem[] = [];
  for (const drawing of drawings) {
    const own = made.find((item) => item.drawing === drawing);
    const item = own ?? (await itemOf(join(out, names.get(drawing)!)));
    if (item) items.push({ ...item, drawing });
  }
  return { version: 1, style, items };
}
