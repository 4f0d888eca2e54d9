import { BadInput } from '../../src/graph/complaint.ts';
import type { Lab, Stock } from '../../src/graph/inks.ts';
import type { SettingsOf } from '../../src/graph/node-kind.ts';
import type { PrintInput } from '../../src/ink/model-input.ts';
import type { FoundRecipe, SearchRules } from '../../src/ink/recipe-search.ts';
import type { matchRough } from '../../src/nodes/match-rough.ts';
import type { Tools } from '../engine/evaluation.ts';
import type { InksValue, PaperValue } from '../engine/values.ts';

/** Colours looked up before the cancel flag is looked at, some 50 ms. */
const AT_ONCE = 256;

/** The paper that recipes are meant for: the one wired in, or the one the inks were read on. @throws BadInput */
export function stockOf(inks: InksValue, paper: PaperValue | undefined): Stock {
  const stock = paper?.stock ?? inks.printing.reference;
  if (!stock) throw new BadInput('Match rough does not know the paper; wire a Paper stock to it');
  return stock;
}

/** For each colour its best recipe, and as many others as asked for. Colours that are alike are looked up once. */
export async function findMatches(
  wanted: readonly Lab[],
  { plates, printing }: InksValue,
  paper: Stock,
  settings: SettingsOf<typeof matchRough>,
  alternatives: number,
  tools: Tools,
): Promise<FoundRecipe[][]> {
  const print: PrintInput = {
    ...printing,
    paper,
    inks: plates.map(({ ink }) => ink),
    passes: plates.map(({ pass }) => pass),
  };
  const rules = rulesOf(settings);
  const different = [...new Map(wanted.map((lab) => [lab.join(), lab]))];
  const found = new Map<string, FoundRecipe[]>();
  for (let at = 0; at < different.length; at += AT_ONCE) {
    const some = different.slice(at, at + AT_ONCE);
    const labs = some.map(([, lab]) => lab);
    const recipes = await tools.whole('findRecipes', { print, rules, wanted: labs, alternatives });
    some.forEach(([key], i) => {
      found.set(key, recipes[i]!);
    });
  }
  return wanted.map((lab) => found.get(lab.join())!);
}

function rulesOf(settings: SettingsOf<typeof matchRough>): SearchRules {
  const { leastPercent, mostPercent } = settings;
  if (leastPercent > mostPercent)
    throw new BadInput(
      `Match rough: the palest tint, ${leastPercent} %, is above the darkest, ${mostPercent} %; lower it`,
    );
  return {
    step: settings.stepPercent / 100,
    least: leastPercent / 100,
    most: mostPercent / 100,
    mostInks: settings.mostInks,
    inkPenalty: settings.inkPenalty,
    mostTotal: settings.totalPercent / 100,
  };
}
