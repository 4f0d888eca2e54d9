import type { GraphNode, Job } from '../graph/job.ts';
import type { SettingsOf } from '../graph/node-kind.ts';
import { wireInto } from '../graph/order.ts';
import { freshNodeId } from '../graph/put-in.ts';
import { area } from '../nodes/area.ts';
import { nodeKinds } from '../nodes/registry.ts';
import { withGraph, withNode } from './edits.ts';
import { nextId, settingsOf } from './parsed.ts';
import { regionsNode } from './region-edits.ts';

type PlaceMm = readonly [number, number];

export type AreaSettings = SettingsOf<typeof area>;

/** Areas of the job, in the order of the document. */
export function areaNodes({ graph }: Pick<Job, 'graph'>): GraphNode[] {
  return graph.nodes.filter(({ kind }) => kind === area.kind);
}

/** The area that is worked at: the chosen node where it is one, else the first; undefined in a job without. */
export function areaAtHand(job: Pick<Job, 'graph'>, chosen: string | null): GraphNode | undefined {
  const areas = areaNodes(job);
  return areas.find(({ id }) => id === chosen) ?? areas[0];
}

export function areaSettings(node: GraphNode): AreaSettings {
  return settingsOf(area, node);
}

/** The nodes that keep to an area. */
export function keptBy({ graph }: Pick<Job, 'graph'>, id: string): GraphNode[] {
  const ends = graph.wires.filter(({ from }) => from.node === id).map(({ to }) => to.node);
  return graph.nodes.filter((node) => ends.includes(node.id));
}

/** Nodes that could keep to an area and are wired to none, the last the sheet comes to first. */
export function areaTargets({ graph }: Pick<Job, 'graph'>): GraphNode[] {
  const takes = ({ kind }: GraphNode) => nodeKinds.get(kind)?.inputs.area?.type === 'area';
  const order = [...nodeKinds.keys()];
  return graph.nodes
    .filter((node) => takes(node) && !wireInto(graph, node.id, 'area'))
    .toSorted((a, b) => order.indexOf(b.kind) - order.indexOf(a.kind));
}

/** The job with a new area over its drawing and regions that a node keeps to; null without regions to lie over. */
export function withArea(job: Job, target: string): { job: Job; node: string } | null {
  const regions = regionsNode(job);
  const drawing = regions && wireInto(job.graph, regions.id, 'drawing');
  if (!drawing) return null;
  const id = freshNodeId(area.kind, job.graph);
  const made = withGraph(job, ({ nodes, wires }) => ({
    nodes: [...nodes, { id, kind: area.kind, settings: {}, bypassed: false }],
    wires: [
      ...wires,
      { from: drawing.from, to: { node: id, port: 'drawing' } },
      { from: { node: regions.id, port: 'regions' }, to: { node: id, port: 'regions' } },
      { from: { node: id, port: 'area' }, to: { node: target, port: 'area' } },
    ],
  }));
  return { job: made, node: id };
}

/** The job with settings of an area changed; lists that are empty are left out. */
function withLists(job: Job, id: string, change: (now: AreaSettings) => Partial<AreaSettings>): Job {
  return withNode(job, id, (node) => {
    const changed = Object.entries(change(areaSettings(node)));
    const names = new Set(changed.map(([name]) => name));
    const others = Object.entries(node.settings).filter(([name]) => !names.has(name));
    const kept = changed.filter(([, value]) => !Array.isArray(value) || value.length > 0);
    return { ...node, settings: Object.fromEntries([...others, ...kept]) as GraphNode['settings'] };
  });
}

const asPath = (path: readonly PlaceMm[]) => path.map(([x, y]): [number, number] => [x, y]);

/** The job with another outline in an area. */
export function withShape(job: Job, id: string, path: readonly PlaceMm[]): Job {
  return withLists(job, id, ({ shapes, lines }) => ({
    shapes: [...shapes, { id: nextId('s', [...shapes, ...lines]), pathMm: asPath(path) }],
  }));
}

/** The job with the line near a path in an area. */
export function withLineNear(job: Job, id: string, path: readonly PlaceMm[], withinMm: number): Job {
  return withLists(job, id, ({ shapes, lines }) => ({
    lines: [...lines, { id: nextId('s', [...shapes, ...lines]), pathMm: asPath(path), withinMm }],
  }));
}

/** The job with whole regions put into an area, or taken out of it. */
export function withRegions(job: Job, id: string, regions: readonly string[], takes: boolean): Job {
  return withLists(job, id, (now) => {
    const set = new Set(now.regions);
    for (const region of regions) takes ? set.add(region) : set.delete(region);
    return { regions: [...set] };
  });
}

/** The job without a shape or line of an area. */
export function withoutShape(job: Job, id: string, shape: string): Job {
  return withLists(job, id, ({ shapes, lines }) => ({
    shapes: shapes.filter((each) => each.id !== shape),
    lines: lines.filter((each) => each.id !== shape),
  }));
}

/** The job with a shape or line of an area moved. */
export function withShapeMoved(job: Job, id: string, shape: string, [dx, dy]: PlaceMm): Job {
  const moved = <Each extends { id: string; pathMm: [number, number][] }>(each: Each): Each =>
    each.id === shape
      ? { ...each, pathMm: each.pathMm.map(([x, y]) => [round(x + dx), round(y + dy)]) }
      : each;
  return withLists(job, id, ({ shapes, lines }) => ({ shapes: shapes.map(moved), lines: lines.map(moved) }));
}

/** To a micrometre. */
const round = (mm: number) => Math.round(mm * 1000) / 1000;
