import { basename } from 'node:path';
import { newJob } from '../graph/default-graph.ts';
import type { Graph, Job } from '../graph/job.ts';
import { hashBytes } from '../graph/keys.ts';
import { numberOf } from './arguments.ts';
import { readBytes } from './read-job.ts';

const text = { type: 'string' } as const;

/** Options that say how large a drawing prints. */
export const SIZE_OPTIONS = { width: text, ppi: text } as const;

/** Which setting of which node an option stands for, and its range. */
const MEASURES = {
  gap: { node: 'closed-regions', setting: 'gapMm', most: 5 },
  smallest: { node: 'closed-regions', setting: 'smallestMm2', most: 100 },
  tuck: { node: 'closed-regions', setting: 'tuckMm', most: 5 },
  roughness: { node: 'closed-regions', setting: 'roughnessMm', most: 2 },
  speck: { node: 'clean-line', setting: 'speckMm2', most: 5 },
} as const;

type Measures = Partial<Record<keyof typeof MEASURES | keyof typeof SIZE_OPTIONS, string | undefined>>;

/**
 * The job that finds the regions of one drawing: Line drawing, Clean line, Closed regions.
 *
 * @param given what was said of sizes on the command line
 * @throws BadUse naming the option that does not fit, BadInput when the file cannot be read
 */
export async function drawingJob(path: string, given: Measures): Promise<{ job: Job; bytes: Uint8Array }> {
  const settings: Record<string, Record<string, number>> = { 'closed-regions': {}, 'clean-line': {} };
  for (const [option, { node, setting, most }] of Object.entries(MEASURES)) {
    const value = given[option as keyof typeof MEASURES];
    if (value !== undefined) settings[node]![setting] = numberOf(option, value, 0, most);
  }
  const size = {
    widthMm: given.width === undefined ? null : numberOf('width', given.width, 1, 5000),
    ppi: given.ppi === undefined ? null : numberOf('ppi', given.ppi, 20, 12_000),
  };
  const bytes = await readBytes(path);
  const asset = hashBytes(bytes);
  const job = newJob(basename(path), chainOf({ asset, ...size }, settings), {
    [asset]: { file: basename(path) },
  });
  return { job, bytes };
}

function chainOf(
  drawing: Graph['nodes'][number]['settings'],
  settings: Record<string, Record<string, number>>,
): Graph {
  const chain = ['line-drawing', 'clean-line', 'closed-regions'];
  const all: Record<string, typeof drawing> = { 'line-drawing': drawing, ...settings };
  return {
    nodes: chain.map((kind) => ({ id: kind, kind, settings: all[kind]!, bypassed: false })),
    wires: chain.slice(1).map((to, i) => ({
      from: { node: chain[i]!, port: 'drawing' },
      to: { node: to, port: 'drawing' },
    })),
  };
}
