import type { Complaint } from './complaint.ts';
import type { GraphNode, Job } from './job.ts';
import type { Case } from './redraw.ts';

type Place = readonly [number, number];

/** A region that surely is the same one: where it should lie by how the drawing as a whole moved, and where it lies. */
export interface SureMatch {
  /** left, top, right, bottom of the old region where the drawing as a whole moved it, mm. */
  boxMm: readonly [number, number, number, number];
  /** How much farther it moved, mm. */
  shiftMm: Place;
}

export interface Follow {
  /** Where an old place lies by how the drawing as a whole moved, mm. */
  move(place: Place): [number, number];
  scale: number;
  turnDeg: number;
  /** Size of the new sheet, mm. */
  sizeMm: Place;
  matches: readonly SureMatch[];
  /** What became of the regions. */
  cases: readonly Case[];
  /** Id of the old region at an old place; null on bare line and beside the sheet. */
  regionAt(place: Place): string | null;
  /** Height over width of a picture; null where it cannot be read. */
  shapeOf(asset: string): number | null;
}

/** Something of the document that keeps its place on the drawing. */
interface Thing {
  /** What it is, to begin a sentence. */
  name: string;
  /** Id of the region it belongs to; null where that is the one under its middle. */
  region: string | null;
}

type Left = Map<string, Complaint & { count: number }>;

/**
 * The job with shapes, strokes, plate art and fades moved as their surroundings moved: as the drawing as a whole, and
 * with the sure match nearest to their middle. What finds no place is moved with the drawing, stays, and is told of.
 *
 * @param job with the old places
 */
export function followed(job: Job, follow: Follow): { job: Job; left: Complaint[] } {
  const left: Left = new Map();
  const nodes = job.graph.nodes.map((node) => movedNode(node, follow, left));
  const colourways = job.colourways.map((colourway) => {
    if (!colourway.fades) return colourway;
    const fades = Object.entries(colourway.fades).map(([region, fade]) => {
      const pathMm = movedPath(fade.pathMm, { name: 'A fade', region }, follow, left);
      return [region, { ...fade, pathMm }] as const;
    });
    return { ...colourway, fades: Object.fromEntries(fades) };
  });
  const told = [...left.values()].map(({ count, ...complaint }) =>
    count === 1
      ? complaint
      : { ...complaint, measure: count, message: `${complaint.message} (${count} of them)` },
  );
  return { job: { ...job, graph: { ...job.graph, nodes }, colourways }, left: told };
}

function movedNode(node: GraphNode, follow: Follow, left: Left): GraphNode {
  const settings = { ...node.settings };
  const moveList = (name: string, points: string, what: string) => {
    const list = settings[name];
    if (!Array.isArray(list)) return;
    settings[name] = list.map((each) => {
      const item = each as Record<string, GraphNode['settings'][string]>;
      const path = item[points] as number[][];
      return { ...item, [points]: movedPath(path, { name: what, region: null }, follow, left) };
    });
  };
  if (node.kind === 'area') {
    moveList('shapes', 'pathMm', 'A shape of an Area');
    moveList('lines', 'pathMm', 'A line of an Area');
    tellOfRegions((settings.regions ?? []) as string[], follow, left);
  } else if (node.kind === 'hand-marks') moveList('marks', 'points', 'A stroke of Hand marks');
  else if (node.kind === 'plate-art') Object.assign(settings, movedArt(node, follow, left));
  else return node;
  return { ...node, settings };
}

/** A path moved with its surroundings; numbers after the first two of a point stay. */
function movedPath<Point extends readonly number[]>(
  path: readonly Point[],
  thing: Thing,
  follow: Follow,
  left: Left,
): Point[] {
  const middle = middleOf(path);
  const [dx, dy] = shiftAt(follow.move(middle), follow.matches);
  const moved = path.map(([x, y, ...rest]) => {
    const [nx, ny] = follow.move([x!, y!]);
    return [mm3(nx + dx), mm3(ny + dy), ...rest] as unknown as Point;
  });
  tellOfPlace(thing, middle, middleOf(moved), follow, left);
  return moved;
}

/** Where a picture on a plate lies; one as wide as the sheet is as wide as that part of the new one. */
function movedArt(node: GraphNode, follow: Follow, left: Left): GraphNode['settings'] {
  const { asset, xMm = 0, yMm = 0, widthMm = 0, turnDeg = 0 } = node.settings;
  if (typeof asset !== 'string' || widthMm === 0) return {};
  const wide = widthMm as number;
  const high = wide * (follow.shapeOf(asset) ?? 1);
  const middle: Place = [(xMm as number) + wide / 2, (yMm as number) + high / 2];
  const moved = follow.move(middle);
  const [dx, dy] = shiftAt(moved, follow.matches);
  const to: Place = [moved[0] + dx, moved[1] + dy];
  tellOfPlace({ name: 'The picture of Plate art', region: null }, middle, to, follow, left);
  return {
    xMm: mm3(to[0] - (wide * follow.scale) / 2),
    yMm: mm3(to[1] - (high * follow.scale) / 2),
    widthMm: mm3(wide * follow.scale),
    turnDeg: Math.min(45, Math.max(-45, mm3((turnDeg as number) + follow.turnDeg))),
  };
}

/** How much farther the sure match nearest to a place moved; of several about it the smallest. */
function shiftAt([x, y]: Place, matches: readonly SureMatch[]): Place {
  let best: SureMatch | null = null;
  let [least, smallest] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const match of matches) {
    const [l, t, r, b] = match.boxMm;
    const away = Math.hypot(Math.max(l - x, 0, x - r), Math.max(t - y, 0, y - b));
    const area = (r - l) * (b - t);
    if (away > least || (away === least && area >= smallest)) continue;
    best = match;
    least = away;
    smallest = area;
  }
  return best?.shiftMm ?? [0, 0];
}

function tellOfPlace(thing: Thing, from: Place, to: Place, follow: Follow, left: Left): void {
  const [width, height] = follow.sizeMm;
  const region = thing.region ?? follow.regionAt(from);
  if (to[0] < 0 || to[1] < 0 || to[0] > width || to[1] > height)
    tell(
      left,
      `${thing.name} now lies beside the sheet; it is kept there: move it or take it out`,
      'place-off-sheet',
      to,
    );
  else if (region !== null && isGone(region, follow.cases))
    tell(
      left,
      `${thing.name} lay on a region that is gone; it is kept and moved with the drawing: look at it`,
      'place-gone',
      to,
    );
}

/** Whole regions of an area: those that are gone stay named, those that merged may belong to it no more. */
function tellOfRegions(regions: readonly string[], { cases }: Follow, left: Left): void {
  for (const id of regions) {
    const into = cases.find(({ state, old, new: fresh }) => state === 'merged' && old === id && fresh !== id);
    if (into)
      tell(
        left,
        `A region of an Area is now part of region ${into.new}, which was not in it; take that in if it should be`,
        'area-region-merged',
      );
    else if (isGone(id, cases))
      tell(
        left,
        'An Area names a region that is gone; it is kept in case the region comes back',
        'area-region-gone',
      );
  }
}

function isGone(region: string, cases: readonly Case[]): boolean {
  return cases.some(({ state, old }) => state === 'gone' && old === region);
}

function tell(left: Left, message: string, code: string, placeMm?: Place): void {
  const there = left.get(message);
  if (there) there.count++;
  else {
    const place = placeMm ? { placeMm: [mm3(placeMm[0]), mm3(placeMm[1])] as [number, number] } : {};
    left.set(message, { code, severity: 'warning', message, ...place, count: 1 });
  }
}

/** The middle of the box round a path. */
function middleOf(path: readonly (readonly number[])[]): Place {
  const span = (axis: 0 | 1) => {
    let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const point of path) {
      least = Math.min(least, point[axis]!);
      most = Math.max(most, point[axis]!);
    }
    return (least + most) / 2;
  };
  return [span(0), span(1)];
}

/** To a micrometre. */
const mm3 = (value: number) => Math.round(value * 1000) / 1000 + 0;
