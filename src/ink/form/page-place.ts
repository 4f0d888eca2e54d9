import { solveLinear } from '../linear-system.ts';

type Point = readonly [number, number];

/**
 * Where places of a page lie in a picture of it: the projective map that takes four points to four others.
 *
 * @param from corners on the page; no three on a line
 * @param to the same corners in the picture
 * @throws RangeError when the four places cannot be the corners of a page
 */
export function pageToPicture(from: readonly Point[], to: readonly Point[]): (place: Point) => Point {
  const rows = from.flatMap(([x, y], i) => {
    const [u, v] = to[i]!;
    return [
      [x, y, 1, 0, 0, 0, -u * x, -u * y, u],
      [0, 0, 0, x, y, 1, -v * x, -v * y, v],
    ];
  });
  const h = solveLinear(rows.map((row) => Float64Array.from(row)));
  if (!h || h.some((value) => !Number.isFinite(value)))
    throw new RangeError(
      'these four places cannot be the corners of the form; point at its four crosses in turn',
    );
  const [a, b, c, d, e, f, g, k] = [...h] as [number, number, number, number, number, number, number, number];
  return ([x, y]) => {
    const w = g * x + k * y + 1;
    return [(a * x + b * y + c) / w, (d * x + e * y + f) / w];
  };
}
