import { defaultGraph, newJob } from '../../../src/graph/default-graph.ts';
import type { GraphNode, Job } from '../../../src/graph/job.ts';
import { parseJob } from '../../../src/graph/parse-job.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';

export type Settings = GraphNode['settings'];

/** Three inks, one plate each, one pass each. */
export const THREE_INKS: Settings = {
  inks: [
    { id: 'straw', name: 'Straw', lab: [85, 2, 60], opacity: 0.005 },
    { id: 'brick', name: 'Brick', lab: [50, 50, 30], opacity: 0.005 },
    { id: 'soot', name: 'Soot', lab: [20, 1, 1], opacity: 0.02 },
  ],
  plates: [
    { id: 'straw', ink: 'straw', pass: 1 },
    { id: 'brick', ink: 'brick', pass: 2 },
    { id: 'soot', ink: 'soot', pass: 3 },
  ],
};

/** The look-first job of one drawing in three inks. */
export function defaultJob(drawing: Settings, inks: Settings = THREE_INKS): Job {
  const asset = typeof drawing.asset === 'string' ? { [drawing.asset]: { file: 'drawing.png' } } : {};
  return newJob('Sampler', defaultGraph(drawing, inks), asset);
}

/** The job with other settings of some nodes, laid over what they had. */
export function withSettings(job: Job, settings: Readonly<Record<string, Settings>>): Job {
  const nodes = job.graph.nodes.map((node) => ({
    ...node,
    settings: { ...node.settings, ...settings[node.id] },
  }));
  return { ...job, graph: { ...job.graph, nodes } };
}

/** The job with these nodes out of the way. */
export function withBypassed(job: Job, ...ids: string[]): Job {
  const nodes = job.graph.nodes.map((node) => (ids.includes(node.id) ? { ...node, bypassed: true } : node));
  return { ...job, graph: { ...job.graph, nodes } };
}

/** The job in a colourway of these recipes; `others` is what every other region prints. */
export function withRecipes(
  job: Job,
  recipes: Job['colourways'][number]['recipes'],
  others: Job['colourways'][number]['others'] = {},
): Job {
  return { ...job, colourways: [{ id: 'a', name: 'A', recipes, others }], colourway: 'a' };
}

/** What becomes of a job when it is saved and opened again. */
export function reopened(job: Job): Job {
  return parseJob(JSON.stringify(job), nodeKinds);
}
