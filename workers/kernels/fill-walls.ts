export interface FillWallsArgs {
  /** Changed in place: 0 becomes the nearest region's label. */
  labels: Uint32Array;
  width: number;
  height: number;
  /** Pixels of drawn walls that are paper in the drawing. */
  walls: Uint32Array;
}

/** A drawn wall is one pixel wide. */
const REACH = 2;

/** Walls drawn by hand print nothing, so that what they part meets on them however short the tuck. */
export function fillWalls(args: FillWallsArgs): void {
  const { labels, walls } = args;
  const bare = new Set([...walls].filter((i) => labels[i] === 0));
  const nearest = [...bare].map((i) => [i, nearestLabel(args, bare, i)] as const);
  for (const [i, label] of nearest) labels[i] = label;
}

function nearestLabel(
  { labels, width, height }: FillWallsArgs,
  bare: ReadonlySet<number>,
  i: number,
): number {
  const [x, y] = [i % width, Math.floor(i / width)];
  let best = Number.POSITIVE_INFINITY;
  let label = 0;
  for (let v = Math.max(0, y - REACH); v <= Math.min(height - 1, y + REACH); v++)
    for (let u = Math.max(0, x - REACH); u <= Math.min(width - 1, x + REACH); u++) {
      const near = v * width + u;
      const d2 = (u - x) * (u - x) + (v - y) * (v - y);
      if (bare.has(near) || labels[near] === 0 || d2 >= best) continue;
      best = d2;
      label = labels[near]!;
    }
  return label;
}
