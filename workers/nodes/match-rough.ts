import { BadInput } from '../../src/graph/complaint.ts';
import type { Lab } from '../../src/graph/inks.ts';
import type { SettingsOf } from '../../src/graph/node-kind.ts';
import { recipeOfShares } from '../../src/graph/recipe.ts';
import { labOfXyz, xyzOfLab } from '../../src/ink/lab.ts';
import { printModel } from '../../src/ink/model.ts';
import { recipeSearch } from '../../src/ink/recipe-search.ts';
import type { Xyz } from '../../src/ink/spectrum.ts';
import { decodeSrgb, xyzOfLinear } from '../../src/ink/srgb.ts';
import { matchRough as kind } from '../../src/nodes/match-rough.ts';
import { evaluation, type Tools } from '../engine/evaluation.ts';
import type { InksValue, RegionMatch, RegionsValue } from '../engine/values.ts';
import { mmToPx } from '../kernels/plane.ts';
import { EDGE_ON_EDGE, type Fit, roughPlace } from '../kernels/rough-place.ts';
import type { RoughPicture } from '../kernels/shrink-rough.ts';

type Settings = SettingsOf<typeof kind>;

/** No sound picture takes longer to open than this. */
const LIMIT_MS = 60_000;
/** Longest side a rough is looked at with, px: colours of regions need no more. */
const LONGEST = 2400;
const VECTOR_PPI = 150;
/** How far from a region's edge its colour is taken where it is wide enough. */
const INWARD_MM = 0.8;
/** A fit that explains less of the rough's colours than this is none: another picture, or no flat colours. */
const LEAST_EXPLAINED = 0.35;
/** A fit must explain so much more than edge on edge to be taken instead. */
const WORTH = 0.02;
/** Farther off than this even with the model's error taken off: the inks do not reach the colour (CIEDE2000). */
export const OUT_OF_REACH = 10;

export const matchRough = evaluation(kind, async ({ settings, inputs, tools }) => {
  const { regions, inks } = inputs;
  if (!settings.asset)
    throw new BadInput('Match rough has no rough yet; choose a colour sketch of the drawing');
  const stock = inputs.paper?.stock ?? inks.printing.reference;
  if (!stock) throw new BadInput('Match rough does not know the paper; wire a Paper stock to it');
  const { rough, name } = await openRough(settings.asset, tools);
  const fit = await fitOf(settings, regions, rough, name, tools);
  const { labels, ppi, table } = regions;
  const size = { width: labels.width, height: labels.height };
  const colours = await tools.whole('roughColours', {
    labels: labels.data,
    ...size,
    count: table.length,
    rough,
    place: roughPlace(size, rough, fit),
    inward: mmToPx(INWARD_MM, ppi),
  });
  const search = searchIn(inks, stock, settings);
  const matched = table.map(({ label }) => {
    const colour = colours[label]!;
    return colour < 0 ? null : search(wantedLab(colour, settings.white, stock.lab));
  });
  tell(matched, name, tools);
  const plates = inks.plates.map(({ id }) => id);
  const recipes = matched.map((match) => match && recipeOfShares(match.tints, plates));
  const long = Math.max(...regions.mm);
  return {
    recipes: {
      type: 'recipes',
      recipes,
      matched,
      fit: {
        scalePercent: fit.scale * 100,
        shiftMm: [fit.shiftX * long, fit.shiftY * long],
        turnDeg: fit.turn,
      },
    },
  };
});

async function openRough(asset: string, tools: Tools): Promise<{ rough: RoughPicture; name: string }> {
  const { name, bytes } = tools.asset(asset);
  const options = { vectorPpi: VECTOR_PPI, widthMm: undefined };
  const { head, pixels } = await tools.alone('openPicture', { bytes, name, options }, LIMIT_MS);
  tools.adopt(pixels.buffer);
  const { width, height, bands } = head;
  const scale = Math.max(1, Math.ceil(Math.max(width, height) / LONGEST));
  const rough = await tools.whole('shrinkRough', { pixels, width, height, bands, scale });
  tools.free(pixels);
  if (!rough.rgba.some((value, i) => (i & 3) === 3 && value >= 128))
    throw new BadInput(
      `${name}: the rough is transparent all over; check that its colours are not on a hidden layer`,
    );
  return { rough, name };
}

async function fitOf(
  settings: Settings,
  regions: RegionsValue,
  rough: RoughPicture,
  name: string,
  tools: Tools,
): Promise<Fit> {
  const { scalePercent, shiftXMm, shiftYMm, turnDeg } = settings;
  const long = Math.max(...regions.mm);
  if (settings.fit === 'set')
    return { scale: scalePercent / 100, shiftX: shiftXMm / long, shiftY: shiftYMm / long, turn: turnDeg };
  if (settings.fit === 'frame') return EDGE_ON_EDGE;
  const { width, height, data } = regions.labels;
  const found = await tools.whole('fitRough', {
    labels: data,
    width,
    height,
    count: regions.table.length,
    rough,
  });
  if (found.explained < LEAST_EXPLAINED) {
    tools.complain({
      code: 'rough-unfit',
      severity: 'warning',
      message: `${name}: its colours do not follow the drawing's regions, so it is laid on edge to edge; check that it is the rough of this drawing, or set its place by hand.`,
    });
    return EDGE_ON_EDGE;
  }
  return found.explained > found.explainedByFrame + WORTH ? found.fit : EDGE_ON_EDGE;
}

/** Lab of a colour of the rough, 0xrrggbb. Relative to the paper, its white is the paper's. */
function wantedLab(colour: number, white: Settings['white'], paper: Readonly<Lab>): Lab {
  const linear = [16, 8, 0].map((shift) => decodeSrgb(((colour >> shift) & 255) / 255));
  const xyz = xyzOfLinear(linear as [number, number, number]);
  if (white === 'screen') return labOfXyz(xyz);
  const ground = xyzOfLab(paper);
  const bare = xyzOfLinear([1, 1, 1]);
  return labOfXyz(xyz.map((value, axis) => (value / bare[axis]!) * ground[axis]!) as Xyz);
}

/** Finds the best recipe of a colour; colours alike are searched once. */
function searchIn(
  inks: InksValue,
  paper: NonNullable<InksValue['printing']['reference']>,
  settings: Settings,
): (wanted: Lab) => RegionMatch {
  const model = printModel({
    ...inks.printing,
    paper,
    inks: inks.plates.map(({ ink }) => ink),
    passes: inks.plates.map(({ pass }) => pass),
  });
  const search = searchFor(model, settings);
  const known = new Map<string, RegionMatch>();
  return (wantedLab) => {
    const key = wantedLab.join();
    const before = known.get(key);
    if (before) return before;
    const { tints, lab, distance } = search(wantedLab)[0]!;
    const match = { wantedLab, tints, lab, distance, outOfReach: distance > OUT_OF_REACH };
    known.set(key, match);
    return match;
  };
}

/** The search that the settings of a Match rough ask for. @throws BadInput when they contradict themselves */
export function searchFor(model: ReturnType<typeof printModel>, settings: Settings) {
  try {
    return recipeSearch(model, {
      step: settings.stepPercent / 100,
      least: Math.min(settings.leastPercent, settings.mostPercent) / 100,
      most: settings.mostPercent / 100,
      mostInks: settings.mostInks,
      inkPenalty: settings.inkPenalty,
      mostTotal: settings.totalPercent / 100,
    });
  } catch (error) {
    throw error instanceof RangeError ? new BadInput(`Match rough: ${error.message}`) : error;
  }
}

function tell(matched: readonly (RegionMatch | null)[], name: string, tools: Tools): void {
  const bare = matched.filter((match) => match === null).length;
  if (bare > 0)
    tools.complain({
      code: 'rough-bare',
      severity: bare === matched.length ? 'error' : 'note',
      message: `${name}: ${bare} of ${matched.length} regions are not painted in the rough; they print as the colourway says.`,
    });
  const far = matched.filter((match) => match?.outOfReach).length;
  if (far > 0)
    tools.complain({
      code: 'rough-out-of-reach',
      severity: 'note',
      message: `${far} regions want colours that these inks do not reach; the nearest were taken.`,
    });
}
