import type { Ink, Lab } from '../graph/inks.ts';
import type { Graph, GraphNode } from '../graph/job.ts';
import type { SettingsOf } from '../graph/node-kind.ts';
import { upstreamOf } from '../graph/order.ts';
import { inkSet } from '../nodes/ink-set.ts';
import { freshId } from '../store/edits.ts';

export type InkSetSettings = SettingsOf<typeof inkSet>;
export type Plate = InkSetSettings['plates'][number];

/** Most inks and plates of a set. */
export const MOST = 12;

/** The Ink set that feeds a node, else the first of the graph; undefined when there is none. */
export function inkSetFor(graph: Graph, node: string | null): GraphNode | undefined {
  const sets = graph.nodes.filter(({ kind }) => kind === inkSet.kind);
  const upstream = node === null ? new Set<string>() : upstreamOf(graph, node);
  return sets.find(({ id }) => upstream.has(id)) ?? sets[0];
}

/** The Ink set whose plates the job delivers. */
export function deliveredInkSet(graph: Graph): GraphNode | undefined {
  return inkSetFor(graph, graph.nodes.find(({ kind }) => kind === 'press-file')?.id ?? null);
}

/** The settings of an Ink set with defaults filled in; null when they do not fit the schema. */
export function readInkSet(node: GraphNode | undefined): InkSetSettings | null {
  if (!node) return null;
  const read = inkSet.settings.safeParse(node.settings);
  return read.success ? read.data : null;
}

/**
 * The plates with the one at `from` moved to place `to` of the print order. Passes belong to the places, not to the
 * plates, so that they never fall along the order. The same list when nothing would move.
 */
export function movePlate(plates: readonly Plate[], from: number, to: number): readonly Plate[] {
  if (from === to || !plates[from] || !plates[to]) return plates;
  const others = plates.filter((_, i) => i !== from);
  const order = [...others.slice(0, to), plates[from], ...others.slice(to)];
  return order.map((plate, i) => ({ ...plate, pass: plates[i]!.pass }));
}

/** The plates with one in another pass; plates before and after follow, so that passes never fall along the order. */
export function setPass(plates: readonly Plate[], at: number, pass: number): Plate[] {
  return plates.map((plate, i) => {
    if (i === at) return { ...plate, pass };
    return { ...plate, pass: i < at ? Math.min(plate.pass, pass) : Math.max(plate.pass, pass) };
  });
}

/** The set with one more ink and a plate for it, last in print order in a pass of its own. */
export function addInk(set: InkSetSettings, name: string, lab: Lab): Pick<InkSetSettings, 'inks' | 'plates'> {
  const stem =
    name
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'ink';
  const id = freshId(stem, [...set.inks, ...set.plates]);
  const inks = [...set.inks, { id, name, lab, opacity: 0.005 }];
  return { inks, plates: addPlate({ ...set, inks }, id) };
}

/** The plates with one more in an ink. */
export function addPlate(set: InkSetSettings, ink: string): Plate[] {
  const pass = Math.min(MOST, (set.plates.at(-1)?.pass ?? 0) + 1);
  return [...set.plates, { id: freshId(ink, set.plates), ink, pass }];
}

/** The set without an ink and its plates; null when no plate would be left. */
export function removeInk(set: InkSetSettings, id: string): Pick<InkSetSettings, 'inks' | 'plates'> | null {
  const plates = set.plates.filter(({ ink }) => ink !== id);
  return plates.length > 0 ? { inks: set.inks.filter((ink) => ink.id !== id), plates } : null;
}

/** The inks with one changed; a colour given anew replaces the one it had, in either notation. */
export function changeInk(inks: readonly Ink[], id: string, change: Partial<Ink>): Ink[] {
  return inks.map((ink) => {
    if (ink.id !== id) return ink;
    const { lab, hex, ...others } = ink;
    const colour = change.lab || change.hex ? {} : { ...(lab && { lab }), ...(hex && { hex }) };
    return { ...others, ...colour, ...change };
  });
}
