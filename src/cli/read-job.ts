import { readFile, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { Asset } from '../../workers/client.ts';
import { unpackJob } from '../graph/archive.ts';
import { BadInput } from '../graph/complaint.ts';
import type { Job } from '../graph/job.ts';
import { hashBytes } from '../graph/keys.ts';
import { parseJob } from '../graph/parse-job.ts';
import { nodeKinds } from '../nodes/registry.ts';

export interface OpenedJob {
  job: Job;
  assets: Asset[];
}

/** Bytes of a file. @throws BadInput when it cannot be read */
export async function readBytes(path: string): Promise<Uint8Array> {
  try {
    if ((await stat(path)).isDirectory()) throw new BadInput('this is a folder; give a file');
    return new Uint8Array(await readFile(path));
  } catch (error) {
    if (error instanceof BadInput) throw error;
    const missing = (error as NodeJS.ErrnoException).code === 'ENOENT';
    throw new BadInput(
      missing ? 'there is no such file; check the path' : 'the file cannot be read; check who may read it',
    );
  }
}

/**
 * Opens a job: JSON with `assets/` beside it, or a `.keyblock` archive.
 *
 * @param needed hashes of the assets to read with it
 * @throws BadInput
 */
export async function readJob(path: string, needed: (job: Job) => readonly string[]): Promise<OpenedJob> {
  const bytes = await readBytes(path);
  const packed = bytes[0] === 0x50 && bytes[1] === 0x4b ? unpackJob(bytes) : null;
  const job = parseJob(packed ? packed.text : new TextDecoder().decode(bytes), nodeKinds);
  const assets: Asset[] = [];
  for (const hash of needed(job)) {
    const file = job.assets[hash]?.file;
    if (!file)
      throw new BadInput(
        `the job uses a file (${hash.slice(0, 12)}...) that its list of assets does not hold`,
      );
    const found = packed
      ? packed.assets.get(file)
      : await readAsset(join(dirname(path), 'assets', file), file);
    if (!found) throw new BadInput(`assets/${file} is missing from the archive`);
    if (hashBytes(found) !== hash)
      throw new BadInput(
        `assets/${file} is not the file the job was saved with; to use another drawing give --drawing FILE`,
      );
    assets.push({ name: file, bytes: found });
  }
  return { job, assets };
}

/** The job with another drawing in its first Line drawing. */
export function withDrawing(job: Job, path: string, bytes: Uint8Array): { job: Job; asset: Asset } {
  const first = job.graph.nodes.find((node) => node.kind === 'line-drawing');
  if (!first) throw new BadInput('the job has no Line drawing node to give the drawing to');
  const hash = hashBytes(bytes);
  const name = basename(path);
  const nodes = job.graph.nodes.map((node) =>
    node === first ? { ...node, settings: { ...node.settings, asset: hash } } : node,
  );
  const assets = { ...job.assets, [hash]: { file: name } };
  return { job: { ...job, graph: { ...job.graph, nodes }, assets }, asset: { name, bytes } };
}

async function readAsset(path: string, file: string): Promise<Uint8Array> {
  try {
    return await readBytes(path);
  } catch (error) {
    throw new BadInput(`assets/${file}: ${(error as Error).message}`);
  }
}
