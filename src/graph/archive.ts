import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from 'fflate';
import { assetsInUse, freshFileName, partsOf } from './assets.ts';
import { BadInput } from './complaint.ts';
import type { Job } from './job.ts';

/** Largest single file and largest whole that are unpacked. */
const MOST_FILE_BYTES = 512 * 1024 * 1024;
const MOST_BYTES = 1024 * 1024 * 1024;

/** The parts of a packed job: its text, and its files by their names inside `assets/`. */
export interface UnpackedJob {
  text: string;
  assets: Map<string, Uint8Array>;
}

/**
 * Opens a `.keyblock` archive: a ZIP that holds `job.json` and `assets/`.
 *
 * @throws BadInput when it is damaged, too large or holds no job
 */
export function unpackJob(archive: Uint8Array): UnpackedJob {
  let total = 0;
  const accept = ({ name, originalSize }: { name: string; originalSize: number }) => {
    if (name !== 'job.json' && !name.startsWith('assets/')) return false;
    total += originalSize;
    if (originalSize > MOST_FILE_BYTES || total > MOST_BYTES)
      throw new BadInput(`"${name}" in the archive is too large to unpack; the archive is damaged or no job`);
    return true;
  };
  const files = unzip(archive, accept);
  const text = files['job.json'];
  if (!text) throw new BadInput('the archive holds no job.json; it is no Keyblock job');
  const assets = Object.entries(files).filter(([name]) => name.startsWith('assets/') && !name.endsWith('/'));
  return { text: strFromU8(text), assets: new Map(assets.map(([name, bytes]) => [name.slice(7), bytes])) };
}

function unzip(archive: Uint8Array, filter: (file: { name: string; originalSize: number }) => boolean) {
  try {
    return unzipSync(archive, { filter });
  } catch (error) {
    if (error instanceof BadInput) throw error;
    throw new BadInput('the archive is damaged and cannot be unpacked; save the job again');
  }
}

/** Endings of files that are compressed already: packing them again would cost time and save nothing. */
const COMPRESSED = new Set(['.png', '.jpg', '.jpeg', '.webp', '.svgz', '.zip', '.ora']);
/** The first day a ZIP can tell: equal jobs make equal archives. */
const NO_DATE = new Date(1980, 0, 1);

/**
 * Packs a job as a `.keyblock` archive. Equal jobs give equal bytes, whenever they are packed.
 *
 * Assets that no node uses any more stay out; two of one name get two names.
 *
 * @param files bytes by hash
 * @throws BadInput when a file that the job uses is missing
 */
export function packJob(job: Job, files: ReadonlyMap<string, Uint8Array>): Uint8Array<ArrayBuffer> {
  const entries: Zippable = {};
  const assets: Job['assets'] = {};
  const names: string[] = [];
  for (const hash of assetsInUse(job).sort()) {
    const wanted = job.assets[hash]?.file ?? hash;
    const bytes = files.get(hash);
    if (!bytes) throw new BadInput(`the file ${wanted} of this job is missing; add the drawing again`);
    const file = freshFileName(wanted, names);
    names.push(file);
    assets[hash] = { file };
    entries[`assets/${file}`] = [unshared(bytes), packing(file)];
  }
  const text = `${JSON.stringify({ ...job, assets }, null, 1)}\n`;
  return zipSync({ 'job.json': [strToU8(text), packing('job.json')], ...entries });
}

function packing(name: string): { level: 0 | 6; mtime: Date } {
  const { ending } = partsOf(name);
  return { level: COMPRESSED.has(ending.toLowerCase()) ? 0 : 6, mtime: NO_DATE };
}

/** The bytes on memory of their own: files, databases and streams refuse shared memory. */
export function unshared(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  return bytes.buffer instanceof ArrayBuffer ? (bytes as Uint8Array<ArrayBuffer>) : new Uint8Array(bytes);
}
