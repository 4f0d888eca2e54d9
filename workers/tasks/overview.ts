import type { Complaint } from '../../src/graph/complaint.ts';
import type { GraphNode, Job } from '../../src/graph/job.ts';
import { lintGraph } from '../../src/graph/wiring.ts';
import { nodeKinds } from '../../src/nodes/registry.ts';
import { Cancelled } from '../engine/cancel.ts';
import type { PlatesValue } from '../engine/values.ts';
import { feeding, firstOf } from './job-ends.ts';
import { nodeThumbnail, type Thumbnail } from './node-thumbnail.ts';
import { mm3 } from './report-parts.ts';
import type { TaskContext } from './task.ts';

export interface OverviewInput {
  job: Job;
  /** n for pictures of 1/n each way: thumbnails, and the coverage is measured on them. */
  scale: number;
}

/** A small grey picture: 0 paper .. 255 solid. */
export interface PlateThumbnail {
  width: number;
  height: number;
  coverage: Uint8Array<ArrayBuffer>;
}

export interface PlateOverview {
  id: string;
  /** Name of its ink. */
  ink: string;
  order: number;
  pass: number;
  coveragePercent: number;
  thumbnail: PlateThumbnail;
}

/** How one node stands. */
export interface NodeOverview {
  /** What it had to say, or why it cannot run. */
  complaints: readonly Complaint[];
  /** Milliseconds it took when it was last computed. */
  ms: number;
  /** What it gives, in small; null without a look. */
  thumbnail: Thumbnail | null;
}

/** The plates as they enter the Press file, and how every node stands. */
export interface Overview {
  plates: PlateOverview[];
  nodes: Record<string, NodeOverview>;
  /** Everything that any node had to say, and what the wiring alone tells. */
  complaints: Complaint[];
}

/** Plates and nodes in small, for lists. What cannot run says why, and holds up nothing else. */
export async function overview(input: OverviewInput, context: TaskContext): Promise<Overview> {
  const { job } = input;
  const nodes: Record<string, NodeOverview> = {};
  for (const node of job.graph.nodes) nodes[node.id] = await nodeOverview(node, input, context);
  const said = Object.values(nodes).flatMap(({ complaints }) => complaints);
  const complaints = [...said, ...lintGraph(job.graph, nodeKinds)];
  return { plates: await platesOf(input, context), nodes, complaints };
}

const SILENT: NodeOverview = { complaints: [], ms: 0, thumbnail: null };

async function nodeOverview(
  node: GraphNode,
  input: OverviewInput,
  context: TaskContext,
): Promise<NodeOverview> {
  const port = Object.keys(nodeKinds.get(node.kind)!.outputs)[0];
  if (node.bypassed || !port) return SILENT;
  const { engine, flag, onProgress } = context;
  const targets = [{ node: node.id, port }];
  try {
    const run = await engine.evaluate({ ...input, targets }, flag, onProgress);
    const { complaints, ms } = run.told[node.id]!;
    const thumbnail = nodeThumbnail(run.values[0]!);
    run.release();
    return { complaints, ms, thumbnail };
  } catch (error) {
    if (error instanceof Cancelled) throw error;
    const { message } = error as Error;
    return { ...SILENT, complaints: [{ code: 'cannot-run', severity: 'error', message }] };
  }
}

/** None where no plates reach a Press file, or they cannot be made: the nodes say why. */
async function platesOf({ job, scale }: OverviewInput, context: TaskContext): Promise<PlateOverview[]> {
  const { engine, flag, onProgress } = context;
  const end = feeding(job, firstOf(job, 'press-file'), 'plates');
  if (!end) return [];
  const { tools, tidy } = engine.toolBox(flag);
  const run = await engine
    .evaluate({ job, targets: [end], scale }, flag, onProgress)
    .catch((error: Error) => {
      if (error instanceof Cancelled) throw error;
      return null;
    });
  if (!run) return [];
  try {
    const plates = (run.values[0] as PlatesValue).plates.map(async ({ id, ink, order, pass, coverage }) => {
      const mean = await tools.whole('mean', { data: coverage.data });
      const { width, height, data } = coverage;
      const thumbnail = { width, height, coverage: new Uint8Array(data) };
      return { id, ink: ink.name, order, pass, coveragePercent: mm3((mean * 100) / 255), thumbnail };
    });
    return await Promise.all(plates);
  } finally {
    tidy();
    run.release();
  }
}
