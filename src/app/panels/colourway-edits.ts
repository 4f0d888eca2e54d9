import type { Job } from '../../graph/job.ts';
import type { Colourway } from '../../graph/recipe.ts';
import { freshId } from '../../store/edits.ts';

const LONGEST_NAME = 80;

/** The job in another of its colourways. */
export function showColourway(job: Job, id: string): Job {
  return job.colourway === id || !job.colourways.some((each) => each.id === id)
    ? job
    : { ...job, colourway: id };
}

/** The job with an empty colourway at the end, in use. */
export function addColourway(job: Job): Job {
  const name = freshLetter(job.colourways);
  const id = freshId(name.toLowerCase(), job.colourways);
  return {
    ...job,
    colourways: [...job.colourways, { id, name, recipes: {}, others: {} }],
    colourway: id,
  };
}

/** The job with a copy of a colourway after it, in use. */
export function duplicateColourway(job: Job, id: string): Job {
  const at = job.colourways.findIndex((each) => each.id === id);
  const from = job.colourways[at];
  if (!from) return job;
  const copy: Colourway = {
    ...from,
    id: freshId(freshLetter(job.colourways).toLowerCase(), job.colourways),
    name: freshName(from.name, job.colourways),
  };
  return { ...job, colourways: job.colourways.toSpliced(at + 1, 0, copy), colourway: copy.id };
}

/** The job with a colourway called otherwise; an empty name changes nothing. */
export function renameColourway(job: Job, id: string, name: string): Job {
  const wanted = name.trim().slice(0, LONGEST_NAME);
  const before = job.colourways.find((each) => each.id === id);
  if (!before || wanted === '' || wanted === before.name) return job;
  const colourways = job.colourways.map((each) => (each === before ? { ...each, name: wanted } : each));
  return { ...job, colourways };
}

/** The job without a colourway; the last one stays. Its right neighbour comes into use, or the left at the end. */
export function deleteColourway(job: Job, id: string): Job {
  const at = job.colourways.findIndex((each) => each.id === id);
  if (at < 0 || job.colourways.length < 2) return job;
  const colourways = job.colourways.toSpliced(at, 1);
  const next = colourways[Math.min(at, colourways.length - 1)]!.id;
  return { ...job, colourways, colourway: job.colourway === id ? next : job.colourway };
}

/** The first letter, or letter with a number, that no colourway is called. */
function freshLetter(colourways: readonly Colourway[]): string {
  const taken = new Set(colourways.flatMap(({ id, name }) => [id.toUpperCase(), name.toUpperCase()]));
  for (let i = 0; ; i++) {
    const letter = String.fromCharCode(65 + (i % 26));
    const name = i < 26 ? letter : `${letter}${Math.floor(i / 26) + 1}`;
    if (!taken.has(name)) return name;
  }
}

/** The name with the next number that is free. */
function freshName(name: string, colourways: readonly Colourway[]): string {
  const taken = new Set(colourways.map((each) => each.name));
  const stem = name.replace(/ \d+$/, '').slice(0, LONGEST_NAME - 5);
  let number = 2;
  while (taken.has(`${stem} ${number}`)) number++;
  return `${stem} ${number}`;
}
