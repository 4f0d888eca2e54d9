import type { Affine } from './offset.ts';

/** Sine and cosine of an angle of at most 45 degrees, by their series: the same bits in every engine. */
export function sineAndCosine(deg: number): [sine: number, cosine: number] {
  const x = (deg * Math.PI) / 180;
  let sine = 0;
  let cosine = 0;
  let term = 1;
  for (let n = 0; n < 20; n++) {
    const sign = (n & 3) < 2 ? 1 : -1;
    if ((n & 1) === 0) cosine += sign * term;
    else sine += sign * term;
    term = (term * x) / (n + 1);
  }
  return [sine, cosine];
}

/** Where each pixel of a picture comes from when it is turned clockwise about its middle by `deg`, at most 45. */
export function turnedPlace(deg: number, width: number, height: number): Affine {
  const [sine, cosine] = sineAndCosine(deg);
  const [midX, midY] = [(width - 1) / 2, (height - 1) / 2];
  return {
    xx: cosine,
    xy: sine,
    x0: midX - cosine * midX - sine * midY,
    yx: -sine,
    yy: cosine,
    y0: midY + sine * midX - cosine * midY,
  };
}
