import type { Ink } from '../graph/inks.ts';
import type { Swatch } from './swatch.ts';

export interface ModelNote {
  /** `outside-model`: a colour that no plain ink has; `predicted-overprints`: not measured. */
  code: 'outside-model' | 'predicted-overprints';
  /** The ink it is about, where it is about one. */
  ink?: string;
  message: string;
}

const PREDICTED =
  'Overprints are predicted from the solids, with figures from offset printing: about 3 CIEDE2000 off there, ' +
  'perhaps 5 to 10 on another press until they are measured.';

const outside = (what: string): string =>
  `${what} lies outside the model (fluorescent, metallic or mistyped) and is shown duller; measure this one.`;

export interface NotesInput {
  paper: Swatch;
  inks: readonly Ink[];
  /** The solid of each ink, in the same order. */
  solids: readonly Swatch[];
  measured: ReadonlyMap<string, Swatch>;
  /** Whether any overprint is a prediction. */
  predicted: boolean;
}

/** What a person should be told beside the colours of a print. */
export function notesOf({ paper, inks, solids, measured, predicted }: NotesInput): ModelNote[] {
  const notes: ModelNote[] = [];
  if (paper.outsideModel) notes.push({ code: 'outside-model', message: outside('The paper') });
  const told = new Set<string>();
  inks.forEach(({ id, name }, i) => {
    if (!solids[i]!.outsideModel || told.has(id)) return;
    told.add(id);
    notes.push({ code: 'outside-model', ink: id, message: outside(name) });
  });
  for (const [key, swatch] of measured) {
    if (!swatch.outsideModel || told.has(key)) continue;
    notes.push({ code: 'outside-model', message: outside(`The measured ${key}`) });
  }
  if (predicted) notes.push({ code: 'predicted-overprints', message: PREDICTED });
  return notes;
}
