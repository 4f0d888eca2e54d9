import type { Job } from './job.ts';

/** Hashes of the assets that a job needs: those its nodes name, and the drawings it had before. */
export function assetsInUse(job: Job): string[] {
  const hashes = job.graph.nodes
    .flatMap(({ settings }) => [settings.asset, settings.backAsset])
    .filter((asset) => typeof asset === 'string');
  const earlier = job.redraw?.earlier.map(({ drawing }) => drawing) ?? [];
  return [...new Set([...hashes, ...earlier])];
}

const LONGEST_NAME = 120;

/** A file name as a job may hold it: no folders, none of the marks that file systems refuse, not too long. */
export function plainFileName(name: string): string {
  const plain = name
    .replace(/[/\\:*?"<>|]|\p{Cc}/gu, '-')
    .replace(/^\.+/, '')
    .trim();
  if (plain === '') return 'file';
  const { stem, ending } = partsOf(plain);
  return `${stem.slice(0, LONGEST_NAME - ending.length)}${ending}`;
}

/** The name, or the name with a number, so that no two are alike in folders that ignore case. */
export function freshFileName(name: string, taken: Iterable<string>): string {
  const used = new Set([...taken].map((other) => other.toLowerCase()));
  if (!used.has(name.toLowerCase())) return name;
  const { stem, ending } = partsOf(name);
  const numbered = (number: number) => {
    const tail = ` ${number}${ending}`;
    return `${stem.slice(0, LONGEST_NAME - tail.length)}${tail}`;
  };
  let number = 2;
  while (used.has(numbered(number).toLowerCase())) number++;
  return numbered(number);
}

/** A file name without its ending, and the ending with its dot; an ending is short. */
export function partsOf(name: string): { stem: string; ending: string } {
  const dot = name.lastIndexOf('.');
  if (dot < 1 || name.length - dot > 12) return { stem: name, ending: '' };
  return { stem: name.slice(0, dot), ending: name.slice(dot) };
}
