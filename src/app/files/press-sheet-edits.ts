import type { Job } from '../../graph/job.ts';
import { wireInto } from '../../graph/order.ts';
import { pressFile } from '../../nodes/press-file.ts';
import { pressSheet } from '../../nodes/press-sheet.ts';
import { nodeKinds } from '../../nodes/registry.ts';
import { withGraph } from '../../store/edits.ts';
import { edit } from '../../store/job-store.ts';
import { setView } from '../../store/view-store.ts';
import { addNode, connect } from '../../wiring/graph-edits.ts';
import { files as texts } from './strings.ts';

/** The id of the Press sheet that is wired to the job's Press file; null where there is none. */
export function sheetNodeOf({ graph }: Job): string | null {
  const press = graph.nodes.find(({ kind }) => kind === pressFile.kind);
  return (press && wireInto(graph, press.id, 'sheet')?.from.node) ?? null;
}

/** The job with a Press sheet wired to its Press file, where it has a Press file. */
export function withPressSheet(job: Job): Job {
  const press = job.graph.nodes.find(({ kind }) => kind === pressFile.kind);
  if (!press || sheetNodeOf(job) !== null) return job;
  const { graph, node } = addNode(job.graph, pressSheet.kind);
  const wired = connect(graph, nodeKinds, { node, port: 'sheet' }, { node: press.id, port: 'sheet' });
  return 'refused' in wired ? job : withGraph(job, () => wired.graph);
}

/** Shows the settings of the Press sheet in the docket, adding one first where there is none. */
export function openPressSheet(job: Job): void {
  if (sheetNodeOf(job) === null) edit(texts.deliver.addSheetStep, withPressSheet);
  setView({ node: sheetNodeOf(withPressSheet(job)), sheet: null });
}
