import type { Job } from '../graph/job.ts';
import type { Fade } from '../graph/recipe.ts';
import { colourwayOf, withColourway } from './edits.ts';

const NONE: Readonly<Record<string, Fade>> = {};

/** Fades of the colourway in use, by region. */
export function fadesOf(job: Job): Readonly<Record<string, Fade>> {
  return colourwayOf(job).fades ?? NONE;
}

/** The job with a fade on a region, in the colourway in use. */
export function withFade(job: Job, region: string, fade: Fade): Job {
  return withColourway(job, (colourway) => ({ ...colourway, fades: { ...colourway.fades, [region]: fade } }));
}

/** The job with a fade changed; as it was when the region has none. */
export function withFadeChanged(job: Job, region: string, change: (fade: Fade) => Fade): Job {
  const fade = fadesOf(job)[region];
  return fade ? withFade(job, region, change(fade)) : job;
}
