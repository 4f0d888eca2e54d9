import { type Camera, type Point, type Size, toDesk } from '../camera.ts';
import { middleOf } from './edit-places.ts';
import type { Mark } from './marks.ts';

/** What a mark looks like on the desk, as SVG paths in px: drawn, drawn in dashes, and filled. */
export interface Shape {
  line: string;
  dashes: string;
  solid: string;
}

/** A wall is never drawn shorter, nor its crossbars: an opening of a tenth of a mm is seen too. */
const LEAST_WALL_PX = 12;
const CROSSBAR_PX = 4;
/** How much of an opened wall is left standing on either side. */
const STUB_PX = 3;
const GAP_PX = 7;
const END_PX = 4;
const SPECK_PX = 3;
/** Marks so far beyond the desk's edge may still reach into it. */
const MARGIN_PX = 24;

const px = (value: number) => Math.round(value * 10) / 10;
const at = ({ x, y }: Point) => `${px(x)} ${px(y)}`;
const lineThrough = (points: readonly Point[]) => `M${points.map(at).join('L')}`;
const square = ({ x, y }: Point, half: number) =>
  `M${px(x - half)} ${px(y - half)}h${2 * half}v${2 * half}h${-2 * half}Z`;
const ring = ({ x, y }: Point, radius: number) =>
  `M${px(x - radius)} ${px(y)}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0`;
const diamond = ({ x, y }: Point, half: number) =>
  `M${px(x)} ${px(y - half)}l${half} ${half}l${-half} ${half}l${-half} ${-half}Z`;
const cross = ({ x, y }: Point, half: number) =>
  `M${px(x - half)} ${px(y - half)}l${2 * half} ${2 * half}m0 ${-2 * half}l${-2 * half} ${2 * half}`;

/** A wall: a bar across its opening that ends in crossbars; an opened one has its middle missing. */
function wallShape([from, to]: readonly [Point, Point], opened: boolean): Shape {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [dx, dy] = length > 0 ? [(to.x - from.x) / length, (to.y - from.y) / length] : [1, 0];
  const half = Math.max(length, LEAST_WALL_PX) / 2;
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const along = (way: number, aside = 0): Point => ({
    x: middle.x + dx * way - dy * aside,
    y: middle.y + dy * way + dx * aside,
  });
  const bars = [-half, half].map((end) => lineThrough([along(end, -CROSSBAR_PX), along(end, CROSSBAR_PX)]));
  const stems = opened
    ? lineThrough([along(-half), along(STUB_PX - half)]) + lineThrough([along(half - STUB_PX), along(half)])
    : lineThrough([along(-half), along(half)]);
  return { line: bars.join('') + stems, dashes: '', solid: '' };
}

/** How a wall or gap looks where others crowd it: a speck of its kind. */
export function speckOf(mark: Mark, camera: Camera): string {
  const middle = toDesk(camera, middleOf(mark.path));
  return mark.is === 'gap' ? diamond(middle, SPECK_PX) : square(middle, SPECK_PX / 2);
}

/** How a mark looks with the sheet as it lies. */
export function shapeOf(mark: Mark, camera: Camera): Shape {
  const path = mark.path.map((mm) => toDesk(camera, mm));
  const [first, last] = [path[0]!, path.at(-1)!];
  if (mark.is === 'wall') return wallShape([first, last], mark.openedBy !== null);
  if (mark.is === 'gap') return { line: diamond(first, GAP_PX), dashes: '', solid: square(first, 1.5) };
  switch (mark.edit.does) {
    case 'draw-wall':
      return { line: lineThrough(path), dashes: '', solid: square(first, END_PX) + square(last, END_PX) };
    case 'cut':
      return { line: cross(first, END_PX) + cross(last, END_PX), dashes: lineThrough(path), solid: '' };
    case 'join':
      return { line: ring(first, END_PX) + ring(last, END_PX), dashes: '', solid: linkBetween(first, last) };
    case 'ignore-mark':
      return {
        line: `${ring(first, 8)}${lineThrough([aside(first, -5.6), aside(first, 5.6)])}`,
        dashes: '',
        solid: '',
      };
    case 'open-wall':
      return { line: square(first, 6) + cross(first, 3), dashes: '', solid: '' };
  }
}

const aside = ({ x, y }: Point, by: number): Point => ({ x: x + by, y: y - by });

/** The bar of a link, from ring to ring; none where they touch. */
function linkBetween(from: Point, to: Point): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length <= 2 * END_PX) return '';
  const [dx, dy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const on = (way: number, off: number): Point => ({
    x: from.x + dx * way - dy * off,
    y: from.y + dy * way + dx * off,
  });
  const [start, end] = [END_PX, length - END_PX];
  return `${lineThrough([on(start, 1), on(end, 1), on(end, -1), on(start, -1)])}Z`;
}

/** Whether any of a mark can lie within the view. */
export function inSight({ path }: Mark, camera: Camera, desk: Size): boolean {
  const places = path.map((mm) => toDesk(camera, mm));
  const within = (values: number[], length: number) =>
    Math.max(...values) > -MARGIN_PX && Math.min(...values) < length + MARGIN_PX;
  return (
    within(
      places.map(({ x }) => x),
      desk.width,
    ) &&
    within(
      places.map(({ y }) => y),
      desk.height,
    )
  );
}

/** Shapes drawn as one. */
export function together(shapes: readonly Shape[]): Shape {
  const join = (part: keyof Shape) => shapes.map((shape) => shape[part]).join('');
  return { line: join('line'), dashes: join('dashes'), solid: join('solid') };
}
