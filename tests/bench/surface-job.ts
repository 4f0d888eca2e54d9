import { fileURLToPath } from 'node:url';
import { readJob } from '../../src/cli/read-job.ts';
import { assetsInUse } from '../../src/graph/assets.ts';
import type { GraphNode } from '../../src/graph/job.ts';
import { sheetOfRun } from '../../workers/tasks/edition-sheet.ts';

/** The demo as the first sheet of a run, with other settings of some nodes. */
export async function demoWith(settings: Readonly<Record<string, GraphNode['settings']>>) {
  const file = fileURLToPath(new URL('../../graphs-demo/artichoke-packet.json', import.meta.url));
  const { job, assets } = await readJob(file, assetsInUse);
  const sheet = sheetOfRun(job, { sheet: 1, of: 1, seed: 1 });
  const nodes = sheet.graph.nodes.map((node) => ({
    ...node,
    settings: { ...node.settings, ...settings[node.id] },
  }));
  return { job: { ...sheet, graph: { ...sheet.graph, nodes } }, assets };
}
