import type { Complaint } from '../../graph/complaint.ts';
import type { Press } from '../../graph/press.ts';
import type { Fade, Recipe } from '../../graph/recipe.ts';
import { figureOf } from '../profiles.ts';

/** A region with what it prints. */
export interface PrintedRegion {
  id: string;
  areaMm2: number;
  anchorMm: readonly [number, number];
  recipe: Recipe;
  fade: Fade | null;
}

/** What a region prints, the two ends of its fade where it has one. */
function tintsOf({ recipe, fade }: PrintedRegion): [plate: string, tint: number][] {
  return fade ? [...Object.entries(fade.from), ...Object.entries(fade.to)] : Object.entries(recipe);
}

/** Tints that come out as paper or as solid, one fault for each tint of a plate; the place is its largest region. */
export function tintFaults(regions: readonly PrintedRegion[], press: Press): Complaint[] {
  const least = figureOf(press, 'leastTintPercent');
  const most = figureOf(press, 'mostTintPercent');
  const found = new Map<string, { plate: string; tint: number; regions: PrintedRegion[] }>();
  for (const region of regions)
    for (const [plate, tint] of tintsOf(region)) {
      const fails =
        (least !== null && tint > 0 && tint < least) || (most !== null && tint < 100 && tint > most);
      if (!fails) continue;
      const key = `${plate} ${tint}`;
      const known = found.get(key) ?? { plate, tint, regions: [] };
      known.regions.push(region);
      found.set(key, known);
    }
  return [...found.values()].map(({ plate, tint, regions: those }) => {
    const largest = those.reduce((a, b) => (b.areaMm2 > a.areaMm2 ? b : a));
    const vanishes = least !== null && tint < least;
    const where = those.length === 1 ? '1 region' : `${those.length} regions`;
    const what = vanishes
      ? `${tint} % on plate ${plate} vanishes (${where}): this press holds tints from ${least} %. Raise it to ${least} %, or leave it out.`
      : `${tint} % on plate ${plate} fills in (${where}): this press holds tints up to ${most} %. Lower it to ${most} %, or make it solid.`;
    return {
      code: vanishes ? 'tint-vanishes' : 'tint-plugs',
      severity: 'error' as const,
      message: what,
      placeMm: [...largest.anchorMm] as [number, number],
      measure: tint,
      plate,
      region: largest.id,
    };
  });
}
