import type { Complaint } from '../graph/complaint.ts';
import type { Graph } from '../graph/job.ts';
import { nodeKinds } from '../nodes/registry.ts';
import { useJob, useResults } from '../store/hooks.ts';
import { complaintsByNode } from './complaints.ts';

type Complaints = readonly Complaint[];

const NONE: Complaints = [];

let last: { graph: Graph; results: Complaints; byNode: ReadonlyMap<string, Complaints> } | null = null;

/** Worked out once for all tickets that ask. */
function byNodeOf(graph: Graph, results: Complaints): ReadonlyMap<string, Complaints> {
  if (last?.graph !== graph || last.results !== results)
    last = { graph, results, byNode: complaintsByNode(graph, nodeKinds, results) };
  return last.byNode;
}

/** What one node complains of. */
export function useComplaints(node: string): Complaints {
  const graph = useJob((job) => job.graph);
  const results = useResults((state) => state.overview?.complaints ?? NONE);
  return byNodeOf(graph, results).get(node) ?? NONE;
}
