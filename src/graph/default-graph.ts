import type { Graph, Job, Wire } from './job.ts';
import { JOB_FORMAT, JOB_VERSION } from './job.ts';

/** `from.port` to `to.port`, written short. */
function wire(from: string, to: string): Wire {
  const end = (text: string) => {
    const [node, port] = text.split('.') as [string, string];
    return { node, port };
  };
  return { from: end(from), to: end(to) };
}

/**
 * The look-first graph that a dropped drawing gets: the line prints in all inks and the fills are knocked out;
 * plates run to the Press file, and by way of Register offset to a proof on paper.
 *
 * @param drawing settings of Line drawing, such as its asset
 * @param inks settings of Ink set
 */
export function defaultGraph(drawing: Graph['nodes'][number]['settings'], inks: typeof drawing): Graph {
  const node = (id: string, settings: typeof drawing = {}) => ({ id, kind: id, settings, bypassed: false });
  return {
    nodes: [
      node('line-drawing', drawing),
      node('clean-line'),
      node('closed-regions'),
      node('ink-set', inks),
      node('region-tints'),
      node('fill-plates'),
      node('key-line'),
      node('plate-grain'),
      node('press-file'),
      node('register-offset', { turnsAbout: 'lay-edge' }),
      node('paper-stock'),
      node('proof'),
    ],
    wires: [
      wire('line-drawing.drawing', 'clean-line.drawing'),
      wire('clean-line.drawing', 'closed-regions.drawing'),
      wire('closed-regions.regions', 'region-tints.regions'),
      wire('ink-set.inks', 'region-tints.inks'),
      wire('closed-regions.regions', 'fill-plates.regions'),
      wire('region-tints.recipes', 'fill-plates.recipes'),
      wire('ink-set.inks', 'fill-plates.inks'),
      wire('fill-plates.plates', 'key-line.plates'),
      wire('clean-line.drawing', 'key-line.drawing'),
      wire('key-line.plates', 'plate-grain.plates'),
      wire('plate-grain.plates', 'press-file.plates'),
      wire('plate-grain.plates', 'register-offset.plates'),
      wire('register-offset.plates', 'proof.plates'),
      wire('paper-stock.paper', 'proof.paper'),
    ],
  };
}

/** A job around a graph, with one empty colourway and nothing remembered. */
export function newJob(name: string, graph: Graph, assets: Job['assets']): Job {
  return {
    format: JOB_FORMAT,
    version: JOB_VERSION,
    name,
    graph,
    colourways: [{ id: 'a', name: 'A', recipes: {}, others: {} }],
    colourway: 'a',
    register: { labelMap: null, next: 1, regions: [] },
    groups: [],
    press: null,
    meant: [],
    pins: [],
    redraw: null,
    assets,
  };
}
