import type { Job } from '../graph/job.ts';
import { wireInto } from '../graph/order.ts';
import { trap } from '../nodes/trap.ts';

/** The job's Trap node; undefined where it has none. */
export function trapOf(job: Job) {
  return job.graph.nodes.find(({ kind }) => kind === trap.kind);
}

/**
 * The job with a Trap node before its Key line, wired to the regions and the drawing that its fills and its line
 * come from; the job as it was where it has one, or where there is no such place.
 */
export function withTrap(job: Job): Job {
  if (trapOf(job)) return job;
  const { graph } = job;
  const keyLine = graph.nodes.find(({ kind }) => kind === 'key-line');
  const fill = graph.nodes.find(({ kind }) => kind === 'fill-plates');
  const plates = keyLine && wireInto(graph, keyLine.id, 'plates');
  const drawing = keyLine && wireInto(graph, keyLine.id, 'drawing');
  const regions = fill && wireInto(graph, fill.id, 'regions');
  if (!plates || !drawing || !regions) return job;
  const ids = new Set(graph.nodes.map(({ id }) => id));
  let id = trap.kind;
  for (let number = 2; ids.has(id); number++) id = `${trap.kind}-${number}`;
  const into = (port: string) => ({ node: id, port });
  const wires = [
    ...graph.wires.filter((wire) => wire !== plates),
    { from: plates.from, to: into('plates') },
    { from: regions.from, to: into('regions') },
    { from: drawing.from, to: into('drawing') },
    { from: into('plates'), to: plates.to },
  ];
  const node = { id, kind: trap.kind, settings: {}, bypassed: false };
  return { ...job, graph: { nodes: [...graph.nodes, node], wires } };
}

/** The job with Trap as wide as this everywhere. */
export function withTrapWidth(job: Job, widthMm: number): Job {
  return changedNodes(withTrap(job), trap.kind, (settings) => ({ ...settings, widthMm }));
}

/** The job with a trap of its own width at the border of two regions. */
export function withPairWidth(job: Job, between: readonly [string, string], widthMm: number): Job {
  return changedNodes(withTrap(job), trap.kind, (settings) => {
    const { pairs } = trap.settings.parse(settings);
    const others = pairs.filter(({ between: pair }) => !between.every((id) => pair.includes(id)));
    return { ...settings, pairs: [...others, { between: [between[0], between[1]], widthMm }] };
  });
}

type Settings = Job['graph']['nodes'][number]['settings'];

/** The job with the settings of all nodes of a kind changed. */
export function changedNodes(job: Job, kind: string, change: (settings: Settings) => Settings): Job {
  const nodes = job.graph.nodes.map((node) =>
    node.kind === kind ? { ...node, settings: change(node.settings) } : node,
  );
  return { ...job, graph: { ...job.graph, nodes } };
}
