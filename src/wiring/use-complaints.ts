import type { NodeOverview } from '../../workers/client.ts';
import type { Complaint } from '../graph/complaint.ts';
import type { Graph } from '../graph/job.ts';
import { nodeKinds } from '../nodes/registry.ts';
import { useJob, useResults } from '../store/hooks.ts';
import { complaintsByNode } from './complaints.ts';

type Complaints = readonly Complaint[];

const NONE: Complaints = [];

type Told = Readonly<Record<string, NodeOverview>>;

const NOTHING: Told = {};

let last: { graph: Graph; nodes: Told; byNode: ReadonlyMap<string, Complaints> } | null = null;

/** Worked out once for all tickets that ask. */
function byNodeOf(graph: Graph, nodes: Told): ReadonlyMap<string, Complaints> {
  if (last?.graph !== graph || last.nodes !== nodes) {
    const told = Object.fromEntries(Object.entries(nodes).map(([id, { complaints }]) => [id, complaints]));
    last = { graph, nodes, byNode: complaintsByNode(graph, nodeKinds, told) };
  }
  return last.byNode;
}

/** What one node complains of. */
export function useComplaints(node: string): Complaints {
  const graph = useJob((job) => job.graph);
  const nodes = useResults((state) => state.overview?.nodes ?? NOTHING);
  return byNodeOf(graph, nodes).get(node) ?? NONE;
}
