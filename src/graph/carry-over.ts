import type { GraphNode, Job } from './job.ts';
import type { Case, Earlier, Redraw } from './redraw.ts';
import type { RegisterEntry } from './register.ts';

type Point = readonly [number, number];

/** Settings that hold places, by node kind: what comes back with a drawing. */
const PLACES: Readonly<Record<string, readonly string[]>> = {
  'closed-regions': ['edits'],
  area: ['shapes', 'lines', 'regions'],
  'hand-marks': ['marks'],
  'plate-art': ['xMm', 'yMm', 'widthMm', 'turnDeg'],
};

/** The nodes with the places of hand edits of regions moved. */
export function movedEdits(
  nodes: readonly GraphNode[],
  move: (place: Point) => [number, number],
): GraphNode[] {
  return nodes.map((node) =>
    node.kind === 'closed-regions' && node.settings.edits
      ? { ...node, settings: { ...node.settings, edits: moved(node.settings.edits, move) } }
      : node,
  ) as GraphNode[];
}

/** Moves every point, a list that begins with two numbers, wherever it stands. */
function moved(value: unknown, move: (place: Point) => [number, number]): unknown {
  if (Array.isArray(value)) {
    const [x, y, ...rest] = value as unknown[];
    if (typeof x === 'number' && typeof y === 'number') return [...move([x, y]), ...rest];
    return value.map((each) => moved(each, move));
  }
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, moved(each, move)]));
}

/** Settings with places of each node, to be put back with the drawing. */
export function placesOf(nodes: readonly GraphNode[]): Earlier['places'] {
  const kept = nodes.flatMap((node) => {
    const names = (PLACES[node.kind] ?? []).filter((name) => name in node.settings);
    const settings = names.map((name) => [name, node.settings[name]!] as const);
    return names.length === 0 ? [] : [[node.id, Object.fromEntries(settings)] as const];
  });
  return Object.fromEntries(kept);
}

/** The job with those settings and fades put back; what was made since then stays beside them. */
export function withPlaces(job: Job, { places, fades }: Earlier): Job {
  const nodes = job.graph.nodes.map((node) => {
    const then = places[node.id];
    if (!then) return node;
    const back = Object.entries(then).map(([name, value]) => [name, together(value, node.settings[name])]);
    return { ...node, settings: { ...node.settings, ...Object.fromEntries(back) } };
  });
  const colourways = job.colourways.map((colourway) =>
    fades && Object.hasOwn(fades, colourway.id)
      ? { ...colourway, fades: { ...colourway.fades, ...fades[colourway.id] } }
      : colourway,
  );
  return { ...job, graph: { ...job.graph, nodes }, colourways };
}

/** A list as it was then, with what has come to it since: things by their ids, regions by theirs. */
function together(then: unknown, now: unknown): unknown {
  if (!Array.isArray(then) || !Array.isArray(now)) return then;
  const idOf = (each: unknown) => (typeof each === 'string' ? each : (each as { id?: string }).id);
  const known = new Set(then.map(idOf));
  return [...then, ...now.filter((each) => !known.has(idOf(each)))];
}

/** The fades of all colourways, to be put back with the drawing. */
export function fadesToKeep({ colourways }: Pick<Job, 'colourways'>): Pick<Earlier, 'fades'> {
  const kept = colourways.flatMap(({ id, fades }) => (fades ? [[id, fades] as const] : []));
  return kept.length > 0 ? { fades: Object.fromEntries(kept) } : {};
}

/**
 * The job with what hung on old regions handed to the new pieces of them: recipes and fades in all colourways, groups,
 * areas and pins. What no new region takes stays under its old id.
 */
export function withPieces(job: Job, pieces: readonly { piece: string; of: string }[]): Job {
  if (pieces.length === 0) return job;
  const colourways = job.colourways.map((colourway) => {
    const recipes = { ...colourway.recipes };
    const fades = { ...colourway.fades };
    for (const { piece, of } of pieces) {
      if (Object.hasOwn(recipes, of)) recipes[piece] = recipes[of]!;
      if (Object.hasOwn(fades, of)) fades[piece] = fades[of]!;
    }
    return { ...colourway, recipes, ...(colourway.fades && { fades }) };
  });
  const withTheirs = (ids: readonly string[]) => {
    const held = new Set(ids);
    return [
      ...ids,
      ...pieces.filter(({ piece, of }) => held.has(of) && !held.has(piece)).map(({ piece }) => piece),
    ];
  };
  const groups = job.groups.map((group) => ({ ...group, regions: withTheirs(group.regions) }));
  const nodes = job.graph.nodes.map((node) =>
    node.kind === 'area' && Array.isArray(node.settings.regions)
      ? { ...node, settings: { ...node.settings, regions: withTheirs(node.settings.regions as string[]) } }
      : node,
  );
  return { ...job, graph: { ...job.graph, nodes }, colourways, groups, pins: withTheirs(job.pins) };
}

/** Gives a region what an old one printed, in all colourways, with its groups and pins; the report follows. */
export function reassign(job: Job, region: string, old: string): Job {
  const given = withPieces(job, [{ piece: region, of: old }]);
  if (!given.redraw) return given;
  const cases = given.redraw.cases.map((each) =>
    each.new === region ? { ...each, old, state: 'moved' as const, confidence: 1, accepted: true } : each,
  );
  return { ...given, redraw: { ...given.redraw, cases } };
}

/** Takes a case as it is. */
export function acceptCase(job: Job, at: number): Job {
  if (!job.redraw?.cases[at]) return job;
  const cases = job.redraw.cases.map((each, i) => (i === at ? { ...each, accepted: true } : each));
  return { ...job, redraw: { ...job.redraw, cases } };
}

/** Cases that a person should look at: all that are neither kept nor accepted. */
export function openCases({ cases }: Redraw): (Case & { at: number })[] {
  return cases
    .map((each, at) => ({ ...each, at }))
    .filter(({ state, accepted }) => state !== 'kept' && accepted !== true);
}

/** The job without recipes, fades, groups and pins of regions that are gone; the report forgets them. */
export function clearGone(job: Job): Job {
  const there = new Set(job.register.regions.map(({ id }) => id));
  const stays = (id: string) => there.has(id);
  const only = <Value>(record: Readonly<Record<string, Value>>) =>
    Object.fromEntries(Object.entries(record).filter(([id]) => stays(id)));
  return {
    ...job,
    colourways: job.colourways.map((colourway) => ({
      ...colourway,
      recipes: only(colourway.recipes),
      ...(colourway.fades && { fades: only(colourway.fades) }),
    })),
    groups: job.groups.map((group) => ({ ...group, regions: group.regions.filter(stays) })),
    pins: job.pins.filter(stays),
    redraw: job.redraw && {
      ...job.redraw,
      cases: job.redraw.cases.filter(({ state }) => state !== 'gone'),
      gone: [],
    },
  };
}

/** The earlier drawings to remember after another redraw, the latest first; a drawing comes once. */
export function remembered(job: Job, now: Earlier): Earlier[] {
  const others = (job.redraw?.earlier ?? []).filter(({ drawing }) => drawing !== now.drawing);
  return [now, ...others].slice(0, 5);
}

/** Register entries of regions by id. */
export function entriesOf(entries: readonly RegisterEntry[]): Map<string, RegisterEntry> {
  return new Map(entries.map((entry) => [entry.id, entry]));
}
