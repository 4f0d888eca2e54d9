import { BadInput } from '../../src/graph/complaint.ts';
import type { Job } from '../../src/graph/job.ts';
import type { Matches } from '../../src/graph/matches.ts';
import { recipeOfShares } from '../../src/graph/recipe.ts';
import type { FoundRecipe } from '../../src/ink/recipe-search.ts';
import { roundedLab } from '../../src/ink/rounded-lab.ts';
import { matchRough } from '../../src/nodes/match-rough.ts';
import type { InksValue, PaperValue, RecipesValue, RegionsValue } from '../engine/values.ts';
import { findMatches, stockOf } from '../nodes/find-matches.ts';
import { feeding, firstOf } from './job-ends.ts';
import { drawingOf, mm3 } from './report-parts.ts';
import type { TaskContext } from './task.ts';

export interface MatchInput {
  job: Job;
  /** How many other recipes to name for each region; none when left out. */
  alternatives?: number;
}

/**
 * What each region wants by the rough of a job's first Match rough, and what comes nearest to it.
 *
 * @throws BadInput when the job has none, or its rough cannot be read
 */
export async function match({ job, alternatives = 0 }: MatchInput, context: TaskContext): Promise<Matches> {
  const { engine, flag, onProgress } = context;
  const node = firstOf(job, matchRough.kind);
  const ends = { regions: feeding(job, node, 'regions'), inks: feeding(job, node, 'inks') };
  if (!node || !ends.regions || !ends.inks)
    throw new BadInput('the job has no Match rough node with regions and inks wired to it');
  const paper = feeding(job, node, 'paper');
  const targets = [{ node, port: 'recipes' }, ends.regions, ends.inks, ...(paper ? [paper] : [])];
  const run = await engine.evaluate({ job, targets, scale: 1 }, flag, onProgress);
  const { tools, tidy } = engine.toolBox(flag);
  try {
    const [recipes, regions, inks, stock] = run.values as [
      RecipesValue,
      RegionsValue,
      InksValue,
      PaperValue?,
    ];
    const plates = inks.plates.map(({ id }) => id);
    const foundOf = ({ tints, lab, distance }: Pick<FoundRecipe, 'tints' | 'lab' | 'distance'>) => ({
      recipe: recipeOfShares(tints, plates),
      lab: roundedLab(lab),
      distance: mm3(distance),
    });
    const settings = matchRough.settings.parse(job.graph.nodes.find(({ id }) => id === node)!.settings);
    const painted = recipes.matched!.filter((matched) => matched !== null);
    const wanted = alternatives === 0 ? [] : painted.map(({ wantedLab }) => wantedLab);
    const paperStock = stockOf(inks, stock);
    const others = await findMatches(wanted, inks, paperStock, settings, alternatives, tools);
    let next = 0;
    const rows = regions.table.map(({ anchorMm, areaMm2 }, i) => {
      const matched = recipes.matched![i];
      if (!matched) return null;
      return {
        id: regions.ids[i]!,
        anchorMm: anchorMm.map(mm3) as [number, number],
        areaMm2: mm3(areaMm2),
        wantedLab: roundedLab(matched.wantedLab),
        ...foundOf(matched),
        outOfReach: matched.outOfReach,
        ...(alternatives > 0 && { alternatives: others[next++]!.slice(1).map(foundOf) }),
      };
    });
    const { scalePercent, shiftMm, turnDeg } = recipes.fit!;
    return {
      version: 1,
      drawing: drawingOf(regions),
      fit: {
        scalePercent: mm3(scalePercent),
        shiftMm: shiftMm.map(mm3) as typeof shiftMm,
        turnDeg: mm3(turnDeg),
      },
      regions: rows.filter((row) => row !== null),
      bare: regions.ids.filter((_, i) => rows[i] === null),
      complaints: run.complaints,
    };
  } finally {
    tidy();
    run.release();
  }
}
