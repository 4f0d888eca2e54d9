import type { Plane } from '../../../workers/kernels/plane.ts';
import { drawnPlane } from './pictures.ts';

/** Shapes are drawn at 600 ppi, in mm. */
export const PPI = 600;
/** Pixels in a millimetre. */
export const MM = PPI / 25.4;

export type Place = readonly [number, number];
/** How far a place is from a stroke's spine, mm. */
export type Spine = (x: number, y: number) => number;

/** A drawing of strokes so many mm wide around their spines, with soft edges. */
export function stroked(widthMm: number, heightMm: number, strokeMm: number, ...spines: Spine[]): Plane {
  return drawnPlane(Math.round(widthMm * MM), Math.round(heightMm * MM), (px, py) => {
    const [x, y] = [(px + 0.5) / MM, (py + 0.5) / MM];
    const away = Math.min(...spines.map((spine) => spine(x, y)));
    return Math.round(255 * Math.min(1, Math.max(0, (strokeMm / 2 - away) * MM + 0.5)));
  });
}

/** The straight way from place to place to place. */
export function path(...places: Place[]): Spine {
  const stretches = places.slice(1).map((to, k) => [places[k]!, to] as const);
  return (x, y) =>
    stretches.reduce((least, [[ax, ay], [bx, by]]) => {
      const [dx, dy] = [bx - ax, by - ay];
      const along = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
      return Math.min(least, Math.hypot(x - ax - along * dx, y - ay - along * dy));
    }, Number.POSITIVE_INFINITY);
}

export function box(left: number, top: number, right: number, bottom: number): Spine {
  return path([left, top], [right, top], [right, bottom], [left, bottom], [left, top]);
}

export function circle([x, y]: Place, radius: number): Spine {
  return (u, v) => Math.abs(Math.hypot(u - x, v - y) - radius);
}

/** A spine without what lies in a straight strip so many mm wide that leaves a place at an angle. */
export function opened(
  spine: Spine,
  [x, y]: Place,
  radians: number,
  openingMm: number,
  strokeMm: number,
): Spine {
  const [ux, uy] = [Math.cos(radians), Math.sin(radians)];
  return (u, v) => {
    const [along, aside] = [(u - x) * ux + (v - y) * uy, (v - y) * ux - (u - x) * uy];
    if (along < 0) return spine(u, v);
    // so that the strip's own edge has the soft edge of a stroke
    return Math.max(spine(u, v), strokeMm / 2 + openingMm / 2 - Math.abs(aside));
  };
}

/** A corridor so many mm from line to line that winds in to the middle; its way in stays open. */
export function spiral(turns: number, corridorMm: number, strokeMm: number): Plane {
  const pitch = corridorMm + strokeMm;
  const middle = (turns + 2) * pitch;
  const places: Place[] = [];
  for (let k = 0; k < 4 * turns; k++) {
    const out = (Math.floor(k / 4) + 0.5) * pitch;
    const more = out + (k % 4 === 3 ? pitch : 0);
    const corner = [
      [-out, -out],
      [out, -out],
      [out, out],
      [-more, out],
    ][k % 4]!;
    places.push([middle + corner[0]!, middle + corner[1]!]);
  }
  return stroked(2 * middle, 2 * middle, strokeMm, path(...places));
}

/** Two round chambers 5 mm across, one above the other, and a waist of so many mm between them. */
export function hourglass(waistMm: number): { line: Plane; waist: Place; chambers: [Place, Place] } {
  const [stroke, radius] = [0.3, 2.5];
  const rise = radius + 0.6;
  const waist: Place = [8, 9.5];
  const chambers: [Place, Place] = [
    [8, 9.5 - rise],
    [8, 9.5 + rise],
  ];
  const half = waistMm / 2 + stroke / 2;
  const sides = [-half, half].map((aside) => path([8 + aside, 9.5 - 0.8], [8 + aside, 9.5 + 0.8]));
  const rounds = chambers.map(([x, y]) => {
    const towards = Math.sign(waist[1] - y);
    const round = circle([x, y], radius + stroke / 2);
    return (u: number, v: number) =>
      (v - y) * towards > 0 && Math.abs(u - x) < half ? Number.POSITIVE_INFINITY : round(u, v);
  });
  return { line: stroked(16, 19, stroke, ...rounds, ...sides), waist, chambers };
}

/** Solid teeth on a back, with slots of so many mm between them that are open at one end. */
export function comb(slotMm: number): Plane {
  const pitch = slotMm + 0.4;
  return drawnPlane(Math.round(12 * MM), Math.round(8 * MM), (px, py) => {
    const [x, y] = [(px + 0.5) / MM - 1, (py + 0.5) / MM - 1];
    if (x < 0 || x >= 10 || y < 0 || y >= 6) return 0;
    return y < 1 || x % pitch < 0.4 ? 255 : 0;
  });
}

/** A box of 10 x 8 mm with lines across it that end so many mm before it; 0 joins it. */
export function hatched(spacingMm: number, endMm: number): Plane {
  const lines: Spine[] = [];
  for (let x = 1 + spacingMm; x < 10.9; x += spacingMm) lines.push(path([x, 1 + endMm], [x, 9 - endMm]));
  return stroked(12, 10, 0.1, box(1, 1, 11, 9), ...lines);
}

/** Rings a step apart around one middle. */
export function rings(count: number, stepMm: number): Plane {
  const middle = (count + 1) * stepMm;
  return stroked(
    2 * middle,
    2 * middle,
    0.2,
    ...Array.from({ length: count }, (_, k) => circle([middle, middle], (k + 1) * stepMm)),
  );
}
