import type { Graph, Wire } from '../graph/job.ts';
import { layersOf } from './layers.ts';

/** Measures of the drawing of a graph, px. */
export interface Measures {
  width: number;
  height: number;
  /** Between two tickets side by side. */
  aside: number;
  /** Between two layers. */
  below: number;
  /** Room that a wire takes where it passes a ticket. */
  lane: number;
}

export interface Point {
  x: number;
  y: number;
}

export interface Layout {
  /** Top left corner of every ticket. */
  places: Map<string, Point>;
  /** By index of the wire: where it passes the layers between its ends, top of a layer and bottom of it. */
  ways: Point[][];
}

/** How far the ports of a wire stand from the middles of the tickets it joins, px. */
export type PortOffsets = (wire: Wire) => { out: number; in: number };

/** A ticket, or the lane of a wire that passes a layer. */
interface Item {
  layer: number;
  width: number;
  lane: boolean;
  above: Pull[];
  beneath: Pull[];
  x: number;
}

/** What an item is wired to in the next layer, and how far aside of it the item would stand. */
interface Pull {
  to: Item;
  aside: number;
}

const SWEEPS = 6;
/** How much a passing wire counts against a ticket: the run of tickets stays straight, passing wires bend. */
const LANE_WEIGHT = 0.1;

const UNMOVED: PortOffsets = () => ({ out: 0, in: 0 });

/**
 * Places the tickets of a graph top to bottom in layers. A wire that passes layers gets a lane in each, so that
 * it runs beside the tickets there and not behind them. Rows are put in order and pulled towards what they are
 * wired to, from the top and from the bottom in turn, so that wires run straight where they can.
 */
export function layoutOf(graph: Graph, measures: Measures, offsets: PortOffsets = UNMOVED): Layout {
  const layers = layersOf(graph);
  const tickets = new Map(graph.nodes.map(({ id }) => [id, item(layers.get(id)!, measures.width, false)]));
  const lanes = graph.wires.map((wire) => laneOf(wire, tickets, measures.lane, offsets(wire)));
  const rows: Item[][] = [];
  for (const each of [...tickets.values(), ...lanes.flat()]) {
    rows[each.layer] ??= [];
    rows[each.layer]!.push(each);
  }
  for (const row of rows) settle(row, measures.aside);
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    const down = sweep % 2 === 0;
    for (const row of down ? rows : [...rows].reverse()) {
      for (const each of row) pull(each, down ? each.above : each.beneath);
      settle(row, measures.aside);
    }
  }
  const top = (layer: number) => layer * (measures.height + measures.below);
  const places = new Map(
    [...tickets].map(([id, { x, layer, width }]) => [id, { x: Math.round(x - width / 2), y: top(layer) }]),
  );
  const ways = lanes.map((lane) =>
    lane.flatMap(({ x, layer }) => [
      { x: Math.round(x), y: top(layer) },
      { x: Math.round(x), y: top(layer) + measures.height },
    ]),
  );
  return { places, ways };
}

function item(layer: number, width: number, lane: boolean): Item {
  return { layer, width, lane, above: [], beneath: [], x: 0 };
}

/** Ties two tickets, with an item in every layer between them; gives those items from the top. */
function laneOf(
  wire: Wire,
  tickets: ReadonlyMap<string, Item>,
  width: number,
  offsets: { out: number; in: number },
): Item[] {
  const from = tickets.get(wire.from.node);
  const to = tickets.get(wire.to.node);
  if (!from || !to) return [];
  const passed = Math.max(0, to.layer - from.layer - 1);
  const lane = Array.from({ length: passed }, (_, i) => item(from.layer + 1 + i, width, true));
  const chain = [from, ...lane, to];
  for (const [i, lower] of chain.slice(1).entries()) {
    const upper = chain[i]!;
    const aside = (upper === from ? offsets.out : 0) - (lower === to ? offsets.in : 0);
    upper.beneath.push({ to: lower, aside: -aside });
    lower.above.push({ to: upper, aside });
  }
  return lane;
}

/** Moves an item to the weighted mean of where the items it is wired to would have it. */
function pull(each: Item, pulls: readonly Pull[]): void {
  if (pulls.length === 0) return;
  let sum = 0;
  let weights = 0;
  for (const { to, aside } of pulls) {
    const weight = to.lane && !each.lane ? LANE_WEIGHT : 1;
    sum += weight * (to.x + aside);
    weights += weight;
  }
  each.x = sum / weights;
}

/** Puts a row in the order of its x and moves its items apart until none overlaps; its middle stays. */
function settle(row: Item[], aside: number): void {
  const wanted = row.reduce((sum, { x }) => sum + x, 0);
  row.sort((a, b) => a.x - b.x);
  for (const [i, each] of row.entries()) {
    const left = row[i - 1];
    if (left) each.x = Math.max(each.x, left.x + (left.width + each.width) / 2 + aside);
  }
  const moved = (row.reduce((sum, { x }) => sum + x, 0) - wanted) / row.length;
  for (const each of row) each.x -= moved;
}
