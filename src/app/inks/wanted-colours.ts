import type { Client } from '../../../workers/client.ts';
import type { Lab } from '../../graph/inks.ts';
import type { Job } from '../../graph/job.ts';
import { recipeOf } from '../../store/edits.ts';
import { recipeKey } from '../../store/recipe-list.ts';
import type { PrintColours } from '../panels/print-colours.ts';

/** A colour to be printed, and how much it counts beside others. */
export interface Wanted {
  lab: Lab;
  weight: number;
}

/** What the colourway in use prints, each colour by the area it covers; bare paper is not wanted. */
export function wantedOfPrint(job: Job, colours: PrintColours): Wanted[] {
  const found = new Map<string, Wanted>();
  for (const { id, areaMm2 } of job.register.regions) {
    const recipe = recipeOf(job, id);
    const key = recipeKey(recipe);
    if (key === '') continue;
    const before = found.get(key);
    if (before) before.weight += areaMm2;
    else found.set(key, { lab: colours.colourOf(recipe).lab, weight: areaMm2 });
  }
  return [...found.values()];
}

/** Colours nearer than this are one, CIE Lab distance squared. */
const ALIKE = 25;

/** Colours that are much alike put together, the heaviest first, at most `most`. */
export function gathered(wanted: readonly Wanted[], most: number): Wanted[] {
  const kept: Wanted[] = [];
  for (const { lab, weight } of [...wanted].sort((a, b) => b.weight - a.weight)) {
    const near = kept.find((other) => apart(other.lab, lab) < ALIKE);
    if (near) near.weight += weight;
    else kept.push({ lab, weight });
  }
  return kept.sort((a, b) => b.weight - a.weight).slice(0, most);
}

function apart(one: Lab, other: Lab): number {
  return one.reduce((sum, value, i) => sum + (value - other[i]!) ** 2, 0);
}

/** What the rough wants, each colour by the area of its regions. @throws when the job has no rough to match */
export async function wantedOfRough(client: Client, job: Job): Promise<Wanted[]> {
  const { regions } = await client.run('match', { job });
  return regions.map(({ wantedLab, areaMm2 }) => ({ lab: wantedLab, weight: areaMm2 }));
}
