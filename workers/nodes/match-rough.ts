import { BadInput } from '../../src/graph/complaint.ts';
import { recipeOfShares } from '../../src/graph/recipe.ts';
import { wantedLab } from '../../src/ink/rough-colour.ts';
import { matchRough as kind } from '../../src/nodes/match-rough.ts';
import { evaluation, type Tools } from '../engine/evaluation.ts';
import type { RegionMatch } from '../engine/values.ts';
import { findMatches, stockOf } from './find-matches.ts';
import { layRough } from './lay-rough.ts';
import { openRough } from './open-rough.ts';
import { regionColours } from './region-colours.ts';

/** Farther off than this (CIEDE2000), three times the model's mean error, the inks do not reach a colour. */
const OUT_OF_REACH = 10;
/** How many regions a complaint names. */
const MOST_NAMED = 5;

export const matchRough = evaluation(kind, async ({ settings, inputs, tools }) => {
  const { regions, inks, paper } = inputs;
  if (!settings.asset)
    throw new BadInput('Match rough has no rough yet; choose a colour sketch of the drawing');
  const stock = stockOf(inks, paper);
  const { rough, name } = await openRough(settings.asset, tools);
  const { laid, place } = await layRough(settings, regions, rough, name, tools);
  const colours = (await regionColours(regions, rough, place, tools)).subarray(1);
  const wanted = Array.from(
    colours.filter((colour) => colour >= 0),
    (colour) => wantedLab(colour, settings.white, stock.lab),
  );
  const found = await findMatches(wanted, inks, stock, settings, 0, tools);
  let next = 0;
  const matched = Array.from(colours, (colour): RegionMatch | null => {
    if (colour < 0) return null;
    const { tints, lab, distance } = found[next]![0]!;
    return { wantedLab: wanted[next++]!, tints, lab, distance, outOfReach: distance > OUT_OF_REACH };
  });
  tellBare(matched, regions.ids, name, tools);
  tellColours(colours, matched, name, tools);
  const plates = inks.plates.map(({ id }) => id);
  const recipes = matched.map((match) => match && recipeOfShares(match.tints, plates));
  return { recipes: { type: 'recipes', recipes, matched, fit: laid } };
});

function tellBare(
  matched: readonly (RegionMatch | null)[],
  ids: readonly string[],
  name: string,
  tools: Tools,
): void {
  const bare = ids.filter((_, i) => matched[i] === null);
  if (bare.length === 0) return;
  const more = bare.length > MOST_NAMED ? ', ...' : '';
  tools.complain({
    code: 'rough-bare',
    severity: bare.length === ids.length ? 'error' : 'note',
    message: `${name}: ${bare.length} of ${ids.length} regions are not painted in the rough (${bare.slice(0, MOST_NAMED).join(', ')}${more}); they print what the colourway gives to all others.`,
  });
}

function tellColours(
  colours: Int32Array,
  matched: readonly (RegionMatch | null)[],
  name: string,
  tools: Tools,
): void {
  const painted = colours.filter((colour) => colour >= 0);
  if (painted.length > 1 && painted.every((colour) => colour === painted[0]))
    tools.complain({
      code: 'rough-one-colour',
      severity: 'warning',
      message: `${name}: all regions have one colour in it (#${painted[0]!.toString(16).padStart(6, '0')}) and get one recipe; check that it is the colour sketch and not the line alone.`,
    });
  const far = matched.filter((match) => match?.outOfReach);
  if (far.length === 0) return;
  const worst = Math.max(...far.map((match) => match!.distance));
  tools.complain({
    code: 'rough-out-of-reach',
    severity: 'note',
    message: `${far.length} regions want colours that these inks do not reach; the nearest were taken, at most ${worst.toFixed(0)} off (CIEDE2000).`,
    measure: worst,
  });
}
