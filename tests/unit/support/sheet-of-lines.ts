import type { Plane } from '../../../workers/kernels/plane.ts';
import { drawnPlane } from './pictures.ts';

/** The sheet is drawn for 300 ppi: 76 by 59 mm. */
export const SHEET_PPI = 300;
const WIDTH = 900;
const HEIGHT = 700;

const band = (distance: number, half: number) => Math.abs(distance) - half;

/**
 * A clean drawing with what drawings are made of: rings, waves and straight lines of 0.3 to 0.6 mm, hatching, a solid
 * disc of 14 mm, dots of 0.4 mm; soft edges of true coverage.
 */
export function sheetOfLines(): Plane {
  return drawnPlane(WIDTH, HEIGHT, (x, y) => {
    const shapes = [
      band(Math.hypot(x - 220, y - 240) - 150, 2.5),
      band(Math.hypot(x - 220, y - 240) - 90, 1.8),
      band(y - 560 - 30 * Math.sin(x / 55), 2.2),
      band(y - 620 - 20 * Math.sin(x / 40 + 1), 3.4),
      Math.hypot(x - 640, y - 190) - 82,
      x > 440 && x < 840 && y > 330 && y < 480 ? band(((x + y) % 18) - 9, 1.8) : 9,
      x > 430 && x < 850 && y > 320 && y < 490 ? Math.min(edge(x, 440, 840), edge(y, 330, 480)) : 9,
      y > 60 && y < 100 ? Math.hypot((x % 40) - 20, y - 80) - 2.6 : 9,
    ];
    return Math.round(255 * Math.min(1, Math.max(0, 0.5 - Math.min(...shapes))));
  });
}

/** Two parallel lines. */
function edge(at: number, first: number, second: number): number {
  return Math.min(band(at - first, 2), band(at - second, 2));
}
