import { BadInput } from './complaint.ts';
import { refuseDoubles } from './doubles.ts';
import { idOfName } from './id-of-name.ts';
import { type Shelf, shelfSchema } from './inks.ts';
import { readJson } from './json-text.ts';
import { checkShape } from './parse-job.ts';
import { inksOfCsv } from './shelf-csv.ts';

export { shelfCsv } from './shelf-csv.ts';

/** Longest text that is read: far above 500 inks. */
const MOST_CHARACTERS = 4 * 1024 * 1024;

/**
 * Reads a list of inks: a shelf or an ink file of ours, JSON with `inks` or a plain list of them, whatever else
 * stands beside them, or CSV (see `inksOfCsv`). A file that names no paper has the usual one of a shelf. An ink
 * without an id gets one from its name.
 *
 * @param fileName tells CSV from JSON where the text itself does not
 * @throws BadInput that names the place and what to do
 */
export function parseShelf(text: string, fileName: string): Shelf {
  if (text.length > MOST_CHARACTERS)
    throw new BadInput('the list is larger than 4 MB; it is no list of inks');
  const isJson = /^\uFEFF?\s*[[{]/.test(text) || /\.json$/i.test(fileName);
  const shelf = checkShape(shelfSchema, isJson ? rawOfJson(text) : { inks: inksOfCsv(text) });
  if (shelf.inks.length === 0) throw new BadInput('the list holds no inks; give each ink a row or an entry');
  refuseDoubles('inks', shelf.inks);
  return shelf;
}

function rawOfJson(text: string): { inks: unknown[]; paper?: unknown } {
  const file = readJson(text, 'list of inks');
  const { inks, paper } = (Array.isArray(file) ? { inks: file } : (file ?? {})) as {
    inks?: unknown;
    paper?: unknown;
  };
  if (!Array.isArray(inks)) throw new BadInput('there is no list of inks; put them under "inks": [ ... ]');
  const named = inks.map((ink) => (lacksId(ink) ? { ...ink, id: idOfName(ink.name) } : ink));
  return paper === undefined ? { inks: named } : { inks: named, paper };
}

const lacksId = (ink: unknown): ink is { name: string } =>
  typeof ink === 'object' && ink !== null && !('id' in ink) && 'name' in ink && typeof ink.name === 'string';

/** The shelf as a JSON file that `parseShelf` reads back. */
export const shelfJson = (shelf: Shelf): string => `${JSON.stringify(shelf, null, 2)}\n`;
