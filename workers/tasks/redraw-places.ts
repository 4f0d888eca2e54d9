import type { DrawingValue } from '../engine/values.ts';
import type { Affine } from '../kernels/offset.ts';
import type { Plane } from '../kernels/plane.ts';
import { mmToPx, pxToMm } from '../kernels/plane.ts';
import type { Alignment } from '../kernels/redraw/align.ts';
import { sineAndCosine } from '../kernels/turn.ts';

/** Where an old place, mm, lies on the new drawing, mm. */
export function forwards(
  { scale, turn, x, y }: Alignment,
  before: DrawingValue,
  after: DrawingValue,
  ratio: number,
): (place: readonly [number, number]) => [number, number] {
  const [sine, cosine] = sineAndCosine(turn);
  return ([px, py]) => {
    const dx = (mmToPx(px, before.ppi) - before.line.width / 2) * ratio * scale;
    const dy = (mmToPx(py, before.ppi) - before.line.height / 2) * ratio * scale;
    return [
      pxToMm(cosine * dx - sine * dy + x + after.line.width / 2, after.ppi),
      pxToMm(sine * dx + cosine * dy + y + after.line.height / 2, after.ppi),
    ];
  };
}

/** Where a pixel of the new drawing lies on the old one, from centre to centre. */
export function backwards(
  { scale, turn, x, y }: Alignment,
  before: Plane,
  after: Plane,
  ratio: number,
): Affine {
  const [sine, cosine] = sineAndCosine(turn);
  const k = 1 / (scale * ratio);
  const midX = after.width / 2 + x - 0.5;
  const midY = after.height / 2 + y - 0.5;
  const xx = k * cosine;
  const xy = k * sine;
  return {
    xx,
    xy,
    x0: before.width / 2 - 0.5 - xx * midX - xy * midY,
    yx: -xy,
    yy: xx,
    y0: before.height / 2 - 0.5 + xy * midX - xx * midY,
  };
}
