import { useMemo } from 'react';
import type { Thumbnail } from '../../workers/client.ts';
import type { Complaint } from '../graph/complaint.ts';
import type { GraphNode } from '../graph/job.ts';
import type { NodeKind } from '../graph/node-kind.ts';
import { nodeKinds } from '../nodes/registry.ts';
import { useJob, useResults, useView } from '../store/hooks.ts';
import { summaryOf } from './summary.ts';
import { shownTime } from './times.ts';
import { useComplaints } from './use-complaints.ts';

/** What a ticket shows of a node. */
export interface Ticket {
  node: GraphNode;
  kind: NodeKind;
  summary: string;
  complaints: readonly Complaint[];
  /** Seconds it last took; null when that is not known or nothing to speak of. */
  seconds: string | null;
  chosen: boolean;
  /** What it gives, in small; null without a look. */
  thumbnail: Thumbnail | null;
}

/** The ticket of a node; null once the node is gone. */
export function useTicket(id: string): Ticket | null {
  const node = useJob((job) => job.graph.nodes.find((each) => each.id === id));
  const assets = useJob((job) => job.assets);
  const chosen = useView((state) => state.node === id);
  const seconds = useResults(({ overview }) => shownTime(overview?.nodes[id]?.ms));
  const thumbnail = useResults(({ overview }) => overview?.nodes[id]?.thumbnail ?? null);
  const complaints = useComplaints(id);
  const kind = node && nodeKinds.get(node.kind);
  const summary = useMemo(() => (node && kind ? summaryOf(node, kind, assets) : ''), [node, kind, assets]);
  return node && kind ? { node, kind, summary, complaints, seconds, chosen, thumbnail } : null;
}
