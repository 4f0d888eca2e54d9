import { assetsInUse, freshFileName, plainFileName } from './assets.ts';
import { BadInput } from './complaint.ts';
import type { Graph, Job, Wire } from './job.ts';
import { wireInto } from './order.ts';

const KIND = 'match-rough';

/**
 * The job with a rough: in its first Match rough, or in a new one wired to its first Region tints, whose own recipes
 * still come first.
 *
 * @param hash of the rough's bytes
 * @throws BadInput when the job has no Region tints with regions and inks
 */
export function withRough(job: Job, fileName: string, hash: string): Job {
  const graph = job.graph.nodes.some(({ kind }) => kind === KIND) ? job.graph : withMatch(job.graph);
  const first = graph.nodes.find(({ kind }) => kind === KIND)!;
  const nodes = graph.nodes.map((node) =>
    node === first ? { ...node, settings: { ...node.settings, asset: hash } } : node,
  );
  const changed = { ...job, graph: { ...graph, nodes } };
  const used = new Set(assetsInUse(changed));
  const others = Object.entries(job.assets).filter(([other]) => used.has(other) && other !== hash);
  const file = freshFileName(
    plainFileName(fileName),
    others.map(([, asset]) => asset.file),
  );
  return { ...changed, assets: { ...Object.fromEntries(others), [hash]: { file } } };
}

function withMatch(graph: Graph): Graph {
  const tints = graph.nodes.find(({ kind }) => kind === 'region-tints');
  const regions = tints && wireInto(graph, tints.id, 'regions');
  const inks = tints && wireInto(graph, tints.id, 'inks');
  if (!tints || !regions || !inks)
    throw new BadInput('a rough needs a Region tints node with regions and inks wired to it');
  const id = freshId(graph);
  const paper = graph.nodes.find(({ kind }) => kind === 'paper-stock');
  const to = (port: string, from: Wire['from']): Wire => ({ from, to: { node: id, port } });
  const at = graph.nodes.indexOf(tints);
  return {
    nodes: graph.nodes.toSpliced(at, 0, { id, kind: KIND, settings: {}, bypassed: false }),
    wires: [
      ...graph.wires.filter(({ to: end }) => end.node !== tints.id || end.port !== 'recipes'),
      to('regions', regions.from),
      to('inks', inks.from),
      ...(paper ? [to('paper', { node: paper.id, port: 'paper' })] : []),
      { from: { node: id, port: 'recipes' }, to: { node: tints.id, port: 'recipes' } },
    ],
  };
}

function freshId(graph: Graph): string {
  const taken = new Set(graph.nodes.map(({ id }) => id));
  let number = 1;
  const id = () => (number === 1 ? KIND : `${KIND}-${number}`);
  while (taken.has(id())) number++;
  return id();
}
