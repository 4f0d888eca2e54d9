import type { End, Graph, Job, Wire } from '../graph/job.ts';
import { nodeKinds } from '../nodes/registry.ts';
import { withGraph } from '../store/edits.ts';
import { edit, jobStore } from '../store/job-store.ts';
import { setView, viewStore } from '../store/view-store.ts';
import {
  addNode,
  canBypass,
  connect,
  disconnect,
  type Edited,
  insertOnWire,
  removeNode,
  setBypassed,
} from './graph-edits.ts';
import { strings } from './strings.ts';
import { setWiring, wiringStore } from './wiring-store.ts';

const graphNow = (): Graph => jobStore.getState().job!.graph;

/** The title of a node of the open document; its id where its kind is unknown. */
export function titleOf(id: string, graph = graphNow()): string {
  const node = graph.nodes.find((each) => each.id === id);
  return (node && nodeKinds.get(node.kind)?.title) ?? id;
}

function replaceGraph(name: string, graph: Graph): void {
  edit(name, (job: Job) => withGraph(job, () => graph));
}

/** Makes the edit a step, or shows why it cannot be. */
function take(name: string, edited: Edited): void {
  if ('refused' in edited) {
    setWiring({ refused: sentence(edited.refused) });
    return;
  }
  replaceGraph(name, edited.graph);
  setWiring({ from: null, wire: null, list: null });
  if (edited.node) setView({ node: edited.node });
}

/** Adds a node and chooses it. */
export function add(kind: string): void {
  const { graph, node } = addNode(graphNow(), kind);
  take(strings.step.add(titleOf(node, graph)), { graph, node });
}

/** Takes a node out; what it handed on runs past. */
export function remove(id: string): void {
  const graph = graphNow();
  const name = strings.step.remove(titleOf(id));
  replaceGraph(name, removeNode(graph, nodeKinds, id));
  setWiring({ from: null, wire: null, list: null });
  if (viewStore.getState().node === id) setView({ node: null });
}

/** Wires an output to an input, or shows the reason why not. */
export function wire(from: End, to: End): void {
  take(strings.step.connect(titleOf(from.node), titleOf(to.node)), connect(graphNow(), nodeKinds, from, to));
}

/** Takes a wire out. */
export function unwire(gone: Wire): void {
  replaceGraph(
    strings.step.disconnect(titleOf(gone.from.node), titleOf(gone.to.node)),
    disconnect(graphNow(), gone),
  );
  setWiring({ wire: null, list: null });
}

/** Puts a new node on the chosen wire. */
export function insert(kind: string): void {
  const on = wiringStore.getState().wire;
  if (!on) return;
  const title = nodeKinds.get(kind)?.title ?? kind;
  take(
    strings.step.insert(title, titleOf(on.from.node), titleOf(on.to.node)),
    insertOnWire(graphNow(), nodeKinds, on, kind),
  );
}

/** Bypasses a node, or uses it again; does nothing to a node that makes its outputs itself. */
export function bypass(id: string, bypassed: boolean): void {
  const node = graphNow().nodes.find((each) => each.id === id);
  const kind = node && nodeKinds.get(node.kind);
  if (!kind || !canBypass(kind)) return;
  const name = bypassed ? strings.step.bypass(kind.title) : strings.step.again(kind.title);
  replaceGraph(name, setBypassed(graphNow(), id, bypassed));
}

/** Chooses an output to wire from; chosen again, it is let go. */
export function chooseOutput(end: End): void {
  const { from } = wiringStore.getState();
  const again = from?.node === end.node && from.port === end.port;
  setWiring({ from: again ? null : end, wire: null, list: null });
}

/** Wires the chosen output to an input; without one, chooses the wire that ends there. */
export function chooseInput(end: End): void {
  const { from } = wiringStore.getState();
  if (from) {
    wire(from, end);
    return;
  }
  const there = graphNow().wires.find(({ to }) => to.node === end.node && to.port === end.port);
  setWiring(there ? { wire: there, list: null } : { refused: strings.outputFirst });
}

function sentence(reason: string): string {
  return `${reason.charAt(0).toUpperCase()}${reason.slice(1)}${reason.endsWith('.') ? '' : '.'}`;
}
