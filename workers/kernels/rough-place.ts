import type { Affine } from './offset.ts';
import { sineAndCosine } from './turn.ts';

/** Width and height, px. */
export interface Size {
  width: number;
  height: number;
}

/** How a rough lies on a drawing, against edge on edge. */
export interface Fit {
  /** 1 edge on edge. */
  scale: number;
  /** Shares of the drawing's longer side, to the right and down. */
  shiftX: number;
  shiftY: number;
  /** Clockwise, degrees, at most 45. */
  turn: number;
}

export const EDGE_ON_EDGE: Fit = { scale: 1, shiftX: 0, shiftY: 0, turn: 0 };

/** Shapes that differ by less than this share lie edge on edge even so: scans are cut unevenly. */
const SAME_SHAPE = 0.02;

/** Whether two pictures have about one shape. */
export function sameShape(one: Size, other: Size): boolean {
  const ratio = (one.width * other.height) / (one.height * other.width);
  return Math.abs(ratio - 1) < SAME_SHAPE;
}

/**
 * Where the pixels of a drawing lie on a rough that is laid over it so: pixel centres to pixel places. Pictures of
 * one shape lie edge on edge; of others the rough is laid on at one scale, as small as covers the whole drawing.
 */
export function roughPlace(drawing: Size, rough: Size, { scale, shiftX, shiftY, turn }: Fit): Affine {
  const stretch = sameShape(drawing, rough);
  const share = Math.min(rough.width / drawing.width, rough.height / drawing.height);
  const kx = (stretch ? rough.width / drawing.width : share) / scale;
  const ky = (stretch ? rough.height / drawing.height : share) / scale;
  const [sine, cosine] = sineAndCosine(turn);
  const long = Math.max(drawing.width, drawing.height);
  const midX = drawing.width / 2 + shiftX * long - 0.5;
  const midY = drawing.height / 2 + shiftY * long - 0.5;
  const xx = kx * cosine;
  const xy = kx * sine;
  const yx = -ky * sine;
  const yy = ky * cosine;
  return {
    xx,
    xy,
    x0: rough.width / 2 - xx * midX - xy * midY,
    yx,
    yy,
    y0: rough.height / 2 - yx * midX - yy * midY,
  };
}
