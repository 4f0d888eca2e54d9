import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { Complaint } from '../graph/complaint.ts';
import type { GraphNode } from '../graph/job.ts';
import type { NodeKind } from '../graph/node-kind.ts';
import { nodeKinds } from '../nodes/registry.ts';
import { useJob, useView } from '../store/hooks.ts';
import { summaryOf } from './summary.ts';
import { shownTime, timesStore } from './times.ts';
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
}

/** The ticket of a node; null once the node is gone. */
export function useTicket(id: string): Ticket | null {
  const node = useJob((job) => job.graph.nodes.find((each) => each.id === id));
  const assets = useJob((job) => job.assets);
  const chosen = useView((state) => state.node === id);
  const seconds = useStore(timesStore, (times) => shownTime(times[id]));
  const complaints = useComplaints(id);
  const kind = node && nodeKinds.get(node.kind);
  const summary = useMemo(() => (node && kind ? summaryOf(node, kind, assets) : ''), [node, kind, assets]);
  return node && kind ? { node, kind, summary, complaints, seconds, chosen } : null;
}
