import type { Plane } from '../../../workers/kernels/plane.ts';
import { randomOf } from './random.ts';
import { box, circle, opened, type Place, path, type Spine, stroked } from './shapes.ts';

/** A box of 12 x 9 mm full of dots 0.2 mm across, `spacingMm` apart and then moved by up to a part of that. */
export function stippled(spacingMm: number, moved: number, seed: number): Plane {
  const random = randomOf(seed);
  const dots: Place[] = [];
  for (let y = 2; y < 9.2; y += spacingMm)
    for (let x = 2; x < 12.2; x += spacingMm)
      dots.push([x + moved * spacingMm * (2 * random() - 1), y + moved * spacingMm * (2 * random() - 1)]);
  const rows = nearby(
    dots.map(([x, y]) => ({ at: [x, y] as const, reach: 0.2, spine: (u, v) => Math.hypot(u - x, v - y) })),
  );
  return stroked(14, 11, 0.2, box(1, 1, 13, 10), rows);
}

export interface Foliage {
  line: Plane;
  /** The middles of the leaves. */
  leaves: Place[];
}

/**
 * Leaves 4 x 2 mm turned any way, in a loose grid, each with a vein in its middle. Every third has an opening of
 * so many mm in its outline.
 */
export function foliage(across: number, down: number, openingMm: number, seed: number): Foliage {
  const random = randomOf(seed);
  const [step, stroke] = [4.8, 0.2];
  const leaves: Place[] = [];
  const drawn: Near[] = [];
  for (let row = 0; row < down; row++)
    for (let column = 0; column < across; column++) {
      const at: Place = [step * (column + 0.7) + 0.2 * random(), step * (row + 0.7) + 0.2 * random()];
      const turn = 2 * Math.PI * random();
      const outline = leafOutline(at, turn);
      const isOpened = leaves.length % 3 === 0;
      const side = turn + (random() < 0.5 ? 0.5 : -0.5) * Math.PI;
      leaves.push(at);
      const vein = path(along(at, turn, -0.5), along(at, turn, 0.5));
      const spine = isOpened ? opened(outline, at, side, openingMm, stroke) : outline;
      drawn.push({ at, reach: 2.5, spine: (u, v) => Math.min(spine(u, v), vein(u, v)) });
    }
  const margin = 1.4 * step - step;
  return { line: stroked(step * across + margin, step * down + margin, stroke, nearby(drawn)), leaves };
}

function along([x, y]: Place, turn: number, mm: number): Place {
  return [x + mm * Math.cos(turn), y + mm * Math.sin(turn)];
}

/** Two arcs that meet in points 4 mm apart and are 2 mm apart in the middle. */
function leafOutline(at: Place, turn: number): Spine {
  const [radius, back] = [2.5, 1.5];
  const [one, other] = [along(at, turn + Math.PI / 2, back), along(at, turn - Math.PI / 2, back)];
  const tips = [along(at, turn, 2), along(at, turn, -2)];
  const arcs = [circle(one, radius), circle(other, radius)];
  return (x, y) => {
    const isOver = [one, other].map(([u, v]) => Math.hypot(x - u, y - v) <= radius + 1);
    const nearTip = Math.min(...tips.map(([u, v]) => Math.hypot(x - u, y - v)));
    const inStrip = Math.abs((x - at[0]) * Math.cos(turn) + (y - at[1]) * Math.sin(turn)) <= 2;
    const sideways = (y - at[1]) * Math.cos(turn) - (x - at[0]) * Math.sin(turn);
    const arc = sideways > 0 ? arcs[1]! : arcs[0]!;
    return inStrip && isOver.every(Boolean) ? Math.min(nearTip, arc(x, y)) : nearTip;
  };
}

interface Near {
  at: Place;
  /** Farther from its place than this, mm, nothing of it is drawn. */
  reach: number;
  spine: Spine;
}

/** Many small spines as one: only those near a place are asked. */
function nearby(all: readonly Near[]): Spine {
  const cell = 1;
  const cells = new Map<string, Near[]>();
  for (const near of all)
    for (let v = Math.floor((near.at[1] - near.reach) / cell); v <= (near.at[1] + near.reach) / cell; v++)
      for (let u = Math.floor((near.at[0] - near.reach) / cell); u <= (near.at[0] + near.reach) / cell; u++) {
        const key = `${u} ${v}`;
        const there = cells.get(key);
        if (there) there.push(near);
        else cells.set(key, [near]);
      }
  return (x, y) => {
    const there = cells.get(`${Math.floor(x / cell)} ${Math.floor(y / cell)}`) ?? [];
    return there.reduce((least, { spine }) => Math.min(least, spine(x, y)), Number.POSITIVE_INFINITY);
  };
}
