import { BadInput } from '../../src/graph/complaint.ts';
import type { Lab } from '../../src/graph/inks.ts';
import type { Job } from '../../src/graph/job.ts';
import { type Recipe, recipeOfShares } from '../../src/graph/recipe.ts';
import { printModel } from '../../src/ink/model.ts';
import { screenOf } from '../../src/ink/screen.ts';
import { printOf } from '../../src/nodes/print.ts';
import { trapReasons } from '../../src/press/strings.ts';
import { overlapOf, type TrapReason } from '../../src/press/trap-rule.ts';
import type { PlatesValue, RegionsValue, TrapBorder } from '../engine/values.ts';
import { pxToMm } from '../kernels/plane.ts';
import { feeding, firstOf } from './job-ends.ts';
import { mm3 } from './report-parts.ts';
import type { TaskContext } from './task.ts';

/** What the trap makes of one border. */
export interface ReportedTrap {
  /** Ids of the two regions. */
  between: [string, string];
  does: TrapBorder['does'];
  /** The region that reaches over the border, or that others stay back from; null where nothing is done. */
  from: string | null;
  /** Ids of the plates that change. */
  plates: string[];
  widthMm: number;
  sharedMm: number;
  reason: TrapReason;
  /** The reason as a sentence. */
  why: string;
  /** What either side prints. */
  recipes: [Recipe, Recipe];
  /** The strip that it makes; null where nothing is done. */
  overlap: { recipe: Recipe; lab: Lab; hex: string; onScreen: boolean } | null;
  /** Near the middle of the border; null where the regions only meet in a corner. */
  placeMm: [number, number] | null;
}

export interface TrapReport {
  /** Trapped borders first, the longest first, at most `MOST_BORDERS`. */
  borders: ReportedTrap[];
  /** All borders between regions. */
  count: number;
}

const MOST_BORDERS = 1000;

/**
 * Every border between regions: whether it is trapped, which way, what colour the overlap gets, and why.
 *
 * @param input.scale 1 for full, n for 1/n each way
 * @throws BadInput when the job has no Trap node with regions wired to it, or no inks
 */
export async function trapReport(
  { job, scale }: { job: Job; scale: number },
  { engine, flag, onProgress }: TaskContext,
): Promise<TrapReport> {
  const node = firstOf(job, 'trap');
  const regionsEnd = feeding(job, node, 'regions');
  if (!node || !regionsEnd) throw new BadInput('the job has no Trap node with regions wired to it');
  const print = printOf(job.graph.nodes);
  if (!print) throw new BadInput('the job has no Ink set, so there are no plates to trap');
  const targets = [{ node, port: 'plates' }, regionsEnd];
  const run = await engine.evaluate({ job, targets, scale }, flag, onProgress);
  const { tools, tidy } = engine.toolBox(flag);
  try {
    const [{ plates, traps = [] }, regions] = run.values as [PlatesValue, RegionsValue];
    const shown = [...traps]
      .sort((a, b) => Number(a.widthMm === 0) - Number(b.widthMm === 0) || b.sharedMm - a.sharedMm)
      .slice(0, MOST_BORDERS);
    const { width, height, data } = regions.labels;
    const pairs = Uint32Array.from(shown.flatMap(({ between }) => between));
    const places = await tools.whole('borderPlaces', { labels: data, width, height, pairs });
    const ids = plates.map(({ id }) => id);
    const model = printModel(print.input);
    const placeOf = (at: number): [number, number] | null =>
      at < 0
        ? null
        : [mm3(pxToMm(at % width, regions.ppi)), mm3(pxToMm(Math.floor(at / width), regions.ppi))];
    const borders = shown.map((border, k): ReportedTrap => {
      const { between, does, from, tints, reason } = border;
      const id = (label: number) => regions.ids[label - 1]!;
      const overlap = does === 'none' ? null : overlapOf(tints[0], tints[1], border);
      const lab = overlap && model.labOf(overlap);
      const recipe = (shares: readonly number[]) => recipeOfShares(shares.map(wholePercent), ids);
      return {
        between: [id(between[0]), id(between[1])],
        does,
        from: from && id(between[from === 'first' ? 0 : 1]),
        plates: border.plates.map((plate) => ids[plate]!),
        widthMm: border.widthMm,
        sharedMm: mm3(border.sharedMm),
        reason,
        why: trapReasons[reason],
        recipes: [recipe(tints[0]), recipe(tints[1])],
        overlap: overlap && lab && { recipe: recipe(overlap), lab, ...screenOf(lab) },
        placeMm: placeOf(places[k]!),
      };
    });
    return { borders, count: traps.length };
  } finally {
    tidy();
    run.release();
  }
}

/** A share to a whole percent: coverage has 255 steps, so that 35 % comes back as 34.9. */
function wholePercent(share: number): number {
  return Math.round(share * 100) / 100;
}
