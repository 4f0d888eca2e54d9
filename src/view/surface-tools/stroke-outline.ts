import { shareOfWidth } from '../../nodes/hand-marks.ts';
import type { DraftPoint } from './surface-store.ts';

const mm = (value: number) => Math.round(value * 1000) / 1000;

/** What a stroke covers, as an SVG path in mm: a disc at each place and a band from one to the next. */
export function strokeOutline(points: readonly DraftPoint[], widthMm: number): string {
  const radius = (press: number) => (shareOfWidth(press) * widthMm) / 2;
  let path = '';
  points.forEach(([x, y, press], i) => {
    const r = radius(press);
    path += `M${mm(x - r)} ${mm(y)}a${mm(r)} ${mm(r)} 0 1 1 ${mm(2 * r)} 0a${mm(r)} ${mm(r)} 0 1 1 ${mm(-2 * r)} 0Z`;
    if (i > 0) path += band(points[i - 1]!, points[i]!, radius(points[i - 1]![2]), r);
  });
  return path;
}

/** The band between two discs, wound like them so that nothing is left out where they overlap. */
function band([ax, ay]: DraftPoint, [bx, by]: DraftPoint, ar: number, br: number): string {
  const long = Math.hypot(bx - ax, by - ay);
  if (long === 0) return '';
  const [nx, ny] = [-(by - ay) / long, (bx - ax) / long];
  const corner = (x: number, y: number, r: number) => `${mm(x + nx * r)} ${mm(y + ny * r)}`;
  return `M${corner(ax, ay, -ar)}L${corner(bx, by, -br)}L${corner(bx, by, br)}L${corner(ax, ay, ar)}Z`;
}
