import type { RankedSets } from '../../workers/client.ts';
import type { InkSetsFile } from '../graph/ink-sets.ts';
import { type Stock, stockSchema } from '../graph/inks.ts';
import { readJson } from '../graph/json-text.ts';
import { checkShape } from '../graph/parse-job.ts';
import { parseShelf } from '../graph/shelf.ts';
import { USUAL_RULES } from '../ink/recipe-search.ts';
import { roundedLab } from '../ink/rounded-lab.ts';
import { readArguments, wholeOf } from './arguments.ts';
import { BadUse, DONE } from './outcome.ts';
import { readText } from './read-text.ts';
import { wantedColours } from './wanted-colours.ts';
import { withEngine } from './with-engine.ts';

export const INK_SETS_USAGE =
  'keyblock ink-sets --wanted FILE --shelf FILE --count N [--paper FILE] [--json]';

const text = { type: 'string' } as const;
const OPTIONS = {
  wanted: text,
  shelf: text,
  count: text,
  paper: text,
  json: { type: 'boolean', default: false },
} as const;
/** How many sets are printed. */
const MOST = 8;

/** The inks of a shelf that reach some colours best. Resolves to the exit code. */
export async function inkSets(args: string[], about: (file: string) => void): Promise<number> {
  const { values } = readArguments(args, OPTIONS, 0, INK_SETS_USAGE);
  const given = (option: 'wanted' | 'shelf' | 'count'): string => {
    const value = values[option];
    if (value === undefined) throw new BadUse(`--${option} is missing. Usage: ${INK_SETS_USAGE}`);
    return value;
  };
  const [wantedFile, shelfFile] = [given('wanted'), given('shelf')];
  const count = wholeOf('count', given('count'), 1, 6);
  about(wantedFile);
  const wanted = wantedColours(await readText(wantedFile));
  if (values.paper !== undefined) about(values.paper);
  const chosen = values.paper === undefined ? null : paperOf(await readText(values.paper));
  about(shelfFile);
  const shelf = parseShelf(await readText(shelfFile), shelfFile);
  const paper = chosen ?? shelf.paper;
  const input = {
    shelf: shelf.inks,
    paper,
    printing: { reference: shelf.paper },
    wanted,
    count,
    rules: USUAL_RULES,
    most: MOST,
  };
  const found = await withEngine(1, (client, options) => client.run('inkSets', input, options));
  if (values.json) process.stdout.write(`${JSON.stringify(fileOf(found))}\n`);
  else process.stdout.write(`${linesOf(found).join('\n')}\n`);
  return DONE;
}

/** A paper by itself, or that of an ink file or a shelf. */
function paperOf(json: string): Stock {
  const file = readJson(json, 'paper') as { paper?: unknown } | null;
  return checkShape(stockSchema, file?.paper ?? file, 'paper');
}

const rounded = (value: number): number => Math.round(value * 1000) / 1000;

function fileOf({ sets, tried, everySet }: RankedSets): InkSetsFile {
  return {
    version: 1,
    sets: sets.map((set) => ({
      ...set,
      mean: rounded(set.mean),
      worst: rounded(set.worst),
      colours: set.colours.map(({ wanted, recipe, lab, distance }) => ({
        wanted: roundedLab(wanted),
        recipe,
        lab: roundedLab(lab),
        distance: rounded(distance),
      })),
    })),
    tried,
    everySet,
  };
}

function linesOf({ sets, tried, everySet }: RankedSets): string[] {
  const names = sets.map(({ inks }) => inks.join(', '));
  const widest = Math.max(...names.map((name) => name.length));
  const alike = sets.filter(({ withinError }) => withinError).length;
  return [
    ...sets.map(
      ({ mean, worst, withinError }, i) =>
        `${withinError ? '*' : ' '} ${names[i]!.padEnd(widest)}  mean ${mean.toFixed(2).padStart(5)}  worst ${worst.toFixed(2).padStart(5)}`,
    ),
    `${tried} sets tried${everySet ? '' : ', not all there are'}; distances are CIEDE2000`,
    `* ${alike} that the prediction cannot tell apart: choose by a test print`,
  ];
}
