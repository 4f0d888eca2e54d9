import type { Affine } from './offset.ts';
import { sineAndCosine } from './turn.ts';

/** Width and height, px. */
export interface Size {
  width: number;
  height: number;
}

/** How a rough lies on a drawing, against where it would lie untouched (see `roughPlace`). */
export interface Fit {
  /** Above 1 the rough is laid on larger. */
  scale: number;
  /** Shares of the drawing's longer side, to the right and down. */
  shiftX: number;
  shiftY: number;
  /** Clockwise about its middle, degrees. */
  turn: number;
}

export const UNMOVED: Fit = { scale: 1, shiftX: 0, shiftY: 0, turn: 0 };

/** Shapes that differ by less than this share lie edge on edge even so: pictures are cut unevenly. */
const SAME_SHAPE = 0.02;

/** Whether two pictures have about one shape. */
export function sameShape(one: Size, other: Size): boolean {
  const ratio = (one.width * other.height) / (one.height * other.width);
  return Math.abs(ratio - 1) < SAME_SHAPE;
}

/**
 * Where the pixel centres of a drawing lie on a rough that is laid over it, as whole pixels once rounded down.
 *
 * @param stretched edge on edge, whatever its shape; else at one scale, middle on middle, as small as covers the drawing
 */
export function roughPlace(drawing: Size, rough: Size, fit: Fit, stretched: boolean): Affine {
  const across = rough.width / drawing.width;
  const down = rough.height / drawing.height;
  const least = Math.min(across, down);
  const kx = (stretched ? across : least) / fit.scale;
  const ky = (stretched ? down : least) / fit.scale;
  const [sine, cosine] = ofAnyTurn(fit.turn);
  const long = Math.max(drawing.width, drawing.height);
  const midX = drawing.width / 2 + fit.shiftX * long - 0.5;
  const midY = drawing.height / 2 + fit.shiftY * long - 0.5;
  const [xx, xy, yx, yy] = [kx * cosine, kx * sine, -ky * sine, ky * cosine];
  return {
    xx,
    xy,
    x0: rough.width / 2 - xx * midX - xy * midY,
    yx,
    yy,
    y0: rough.height / 2 - yx * midX - yy * midY,
  };
}

/** Sine and cosine of any angle in degrees, by quarter turns. */
function ofAnyTurn(deg: number): readonly [sine: number, cosine: number] {
  const quarters = Math.round(deg / 90);
  const [s, c] = sineAndCosine(deg - quarters * 90);
  const turned = [
    [s, c],
    [c, -s],
    [-s, -c],
    [-c, s],
  ] as const;
  return turned[quarters & 3]!;
}
