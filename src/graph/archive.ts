import { strFromU8, unzipSync } from 'fflate';
import { BadInput } from './complaint.ts';

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
