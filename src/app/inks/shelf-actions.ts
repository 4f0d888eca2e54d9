import { addPlate, deliveredInkSet, readInkSet } from '../../docket/ink-edits.ts';
import type { Ink, Shelf } from '../../graph/inks.ts';
import { parseShelf, shelfCsv, shelfJson } from '../../graph/shelf.ts';
import { freshId, withNode } from '../../store/edits.ts';
import { edit, jobStore } from '../../store/job-store.ts';
import { download } from '../files/browser-files.ts';
import { say, sayBriefly } from '../files/files-store.ts';
import { changeShelf, withInks } from './shelf-store.ts';
import { inkTexts } from './strings.ts';

const texts = inkTexts.shelf;

/** Lets the person choose a list of inks and puts them on the shelf. */
export function chooseShelfFile(): Promise<void> {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = '.json,.csv,.txt';
  return new Promise((resolve) => {
    input.addEventListener('change', () => resolve(importFile(input.files?.[0])));
    input.addEventListener('cancel', () => resolve());
    input.click();
  });
}

async function importFile(file: File | undefined): Promise<void> {
  if (!file) return;
  try {
    const { inks } = parseShelf(await file.text(), file.name);
    changeShelf((shelf) => withInks(shelf, inks, freshId));
    sayBriefly(texts.imported(inks.length, file.name));
  } catch (error) {
    say(texts.notImported(file.name, (error as Error).message));
  }
}

/** Hands the shelf over as a file. */
export function exportShelf(shelf: Shelf, as: 'json' | 'csv'): void {
  const text = as === 'json' ? shelfJson(shelf) : shelfCsv(shelf);
  const type = as === 'json' ? 'application/json' : 'text/csv';
  download(`inks.${as}`, new TextEncoder().encode(text), type);
}

/** Copies an ink into the job, with a plate that prints last. */
export function addToJob(ink: Ink): void {
  const node = deliveredInkSet(jobStore.getState().job!.graph);
  const set = readInkSet(node);
  if (!node || !set) return;
  const copy = { ...ink, id: freshId(ink.id, [...set.inks, ...set.plates]) };
  const inks = [...set.inks, copy];
  const plates = addPlate({ ...set, inks }, copy.id);
  const plain = JSON.parse(JSON.stringify({ inks, plates })) as typeof node.settings;
  edit(texts.step(ink.name), (job) =>
    withNode(job, node.id, (old) => ({ ...old, settings: { ...old.settings, ...plain } })),
  );
}
