import type { Ink, Lab, Measurement, Stock } from '../graph/inks.ts';
import { differenceOf } from './difference.ts';
import { platesOf, type Reading, type Readings } from './readings.ts';
import type { Swatch } from './swatch.ts';

export interface ModelNote {
  /**
   * `outside-model`: a colour that no plain ink has; `lighter-than-stock`: an ink that lightens its paper;
   * `unlikely-reading`: a reading that the inks can hardly give; `unaccepted-reading`: a photo or an eye that
   * changes nothing until accepted; `predicted-overprints`: not measured.
   */
  code:
    | 'outside-model'
    | 'lighter-than-stock'
    | 'unlikely-reading'
    | 'unaccepted-reading'
    | 'predicted-overprints';
  /** The ink it is about, where it is about one. */
  ink?: string;
  /** The inks whose reading it is about. */
  inks?: readonly string[];
  /** CIEDE2000 between an unaccepted reading and the prediction. */
  distance?: number;
  message: string;
}

export interface NotesInput {
  paper: Stock;
  paperSwatch: Swatch;
  inks: readonly Ink[];
  /** The colour each ink was typed or read with, in the same order. */
  swatches: readonly Swatch[];
  readings: Readings;
  /** Lab of a primary as printed; bit i is ink i. */
  labOf(set: number): Lab;
  isMeasured(set: number): boolean;
}

const PREDICTED =
  'Overprints are predicted from the solids, with figures from offset printing: about 3 CIEDE2000 off there, ' +
  'perhaps 5 to 10 on another press until they are measured.';

/** A solid nearer to its paper than this, CIEDE2000, was hardly read on ink. */
const LIKE_PAPER = 1;
/** How much lighter, in L, than its darkest ink an overprint may read before translucent inks cannot explain it. */
const LIGHTER = 5;
/** Up to this opacity an ink counts as translucent. */
const TRANSLUCENT = 0.1;
/** An ink that much lighter than its paper, in L, works by what it hides. */
const LIGHTENS = 1;

const outside = (what: string): string =>
  `${what} lies outside the model (fluorescent, metallic or mistyped) and is shown duller; measure this one.`;

/** What a person should be told beside the colours of a print. */
export function notesOf(input: NotesInput): ModelNote[] {
  const { paperSwatch, inks, readings, isMeasured } = input;
  const overprints = Array.from({ length: 2 ** inks.length }, (_, set) => set).filter(
    (set) => set & (set - 1),
  );
  return [
    ...(paperSwatch.outsideModel ? [{ code: 'outside-model', message: outside('The paper') } as const] : []),
    ...inks.flatMap(({ id }, i) =>
      inks.findIndex((ink) => ink.id === id) === i ? notesOfInk(input, i) : [],
    ),
    ...[...readings.counting.values()].flatMap((reading) => notesOfReading(input, reading)),
    ...readings.hints.map((hint) => noteOfHint(input, hint)),
    ...(overprints.every(isMeasured) ? [] : [{ code: 'predicted-overprints', message: PREDICTED } as const]),
  ];
}

function notesOfInk({ paper, inks, swatches, labOf, isMeasured }: NotesInput, i: number): ModelNote[] {
  const { id, name } = inks[i]!;
  if (swatches[i]!.outsideModel) return [{ code: 'outside-model', ink: id, message: outside(name) }];
  if (isMeasured(1 << i) || labOf(1 << i)[0] <= paper.lab[0] + LIGHTENS) return [];
  const message = `${name} is lighter than this paper, which hangs on how well it hides; measure this one.`;
  return [{ code: 'lighter-than-stock', ink: id, message }];
}

function notesOfReading(input: NotesInput, { inks: read, lab, swatch }: Reading): ModelNote[] {
  const { paper, inks, labOf } = input;
  const what = read.join(' + ');
  if (swatch.outsideModel && read.length > 1)
    return [{ code: 'outside-model', inks: read, message: outside(`The measured ${what}`) }];
  const unlikely = (said: string): ModelNote[] => [
    { code: 'unlikely-reading', inks: read, message: `The reading of ${what} ${said}` },
  ];
  if (read.length === 1)
    return differenceOf(lab, paper.lab) < LIKE_PAPER
      ? unlikely('is that of the paper; measure its solid again.')
      : [];

  const set = platesOf(
    read,
    inks.map(({ id }) => id),
  );
  if (set === null) return unlikely('names more plates of an ink than this print has; it is not used.');
  const there = [...inks.keys()].filter((ink) => set & (1 << ink));
  const darkest = Math.min(...there.map((ink) => labOf(1 << ink)[0]));
  const clear = there.slice(1).every((ink) => inks[ink]!.opacity <= TRANSLUCENT);
  if (!clear || lab[0] <= darkest + LIGHTER) return [];
  const by = Math.round(lab[0] - darkest);
  return unlikely(
    `is ${by} L lighter than its darkest ink alone, which translucent inks cannot be; measure it again, or give the upper ink more opacity.`,
  );
}

function noteOfHint({ inks, labOf }: NotesInput, { inks: read, how, lab }: Measurement): ModelNote {
  const set = platesOf(
    read,
    inks.map(({ id }) => id),
  );
  const distance = differenceOf(lab, labOf(set ?? 0));
  const from = how === 'photo' ? 'A photo' : 'A judgement by eye';
  const message = `${from} of ${read.join(' + ')} lies ${distance.toFixed(1)} CIEDE2000 from what is predicted; it changes nothing until you accept it.`;
  return { code: 'unaccepted-reading', inks: read, distance, message };
}
