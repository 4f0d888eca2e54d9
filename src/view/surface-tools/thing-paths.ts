import type { Point } from '../camera.ts';
import type { Thing } from './things.ts';

const mm = (value: number) => Math.round(value * 1000) / 1000;

/** A thing as it is drawn over the print: an SVG path in mm. */
export function thingPath({ path, closed, round }: Thing): string {
  const through = `M${path.map(({ x, y }) => `${mm(x)} ${mm(y)}`).join('L')}`;
  if (round) return through + circle(path[0]!, path.at(-1)!);
  if (closed) return `${through}Z`;
  return path.length === 1 ? `${through}h0.01` : through;
}

/** The circle about a middle through a place on its rim. */
export function circle(middle: Point, rim: Point): string {
  const r = mm(Math.hypot(rim.x - middle.x, rim.y - middle.y));
  return `M${mm(middle.x - r)} ${mm(middle.y)}a${r} ${r} 0 1 1 ${2 * r} 0a${r} ${r} 0 1 1 ${-2 * r} 0`;
}
