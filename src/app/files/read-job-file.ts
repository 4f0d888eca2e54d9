import type { Asset } from '../../../workers/client.ts';
import { unpackJob } from '../../graph/archive.ts';
import { assetsInUse } from '../../graph/assets.ts';
import { BadInput } from '../../graph/complaint.ts';
import type { Job } from '../../graph/job.ts';
import { hashBytes } from '../../graph/keys.ts';
import { parseJob } from '../../graph/parse-job.ts';
import { nodeKinds } from '../../nodes/registry.ts';

export interface ReadJob {
  job: Job;
  files: { hash: string; asset: Asset }[];
}

/** What a file is, told by its first bytes. */
export function kindOfFile(bytes: Uint8Array): 'archive' | 'text' | 'picture' {
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) return 'archive';
  const head = new TextDecoder().decode(bytes.slice(0, 64)).trimStart();
  return head.startsWith('{') ? 'text' : 'picture';
}

/**
 * Reads a job: a `.keyblock` archive, or its JSON with the files it needs given beside it.
 *
 * @param beside other files that were chosen with it, by name
 * @throws BadInput with one line that says what to do
 */
export function readJobFile(bytes: Uint8Array, beside: ReadonlyMap<string, Uint8Array>): ReadJob {
  const packed = kindOfFile(bytes) === 'archive' ? unpackJob(bytes) : null;
  const job = parseJob(packed ? packed.text : new TextDecoder().decode(bytes), nodeKinds);
  const held = packed ? packed.assets : beside;
  const files = assetsInUse(job).map((hash) => {
    const file = job.assets[hash]?.file;
    const found = file === undefined ? undefined : held.get(file);
    if (file === undefined)
      throw new BadInput(
        `it uses a file (${hash.slice(0, 12)}...) that its list of assets does not hold; it is damaged`,
      );
    if (!found)
      throw new BadInput(
        packed
          ? `assets/${file} is missing from it; save the job again where it was made`
          : `it needs ${file} from its folder assets; choose both files together, or open a .keyblock file, which holds them`,
      );
    if (hashBytes(found) !== hash)
      throw new BadInput(`${file} is not the file that the job was saved with; find the right one`);
    return { hash, asset: { name: file, bytes: found } };
  });
  return { job, files };
}
