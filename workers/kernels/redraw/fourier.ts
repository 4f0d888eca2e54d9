import { sineAndCosine } from '../turn.ts';

/** A square of complex numbers, row by row. */
export interface Complex {
  re: Float64Array;
  im: Float64Array;
}

/** Cosines and sines of whole turns over `size`, built from an eighth so that every engine gives the same bits. */
function turns(size: number): Complex {
  const re = new Float64Array(size);
  const im = new Float64Array(size);
  for (let k = 0; k < size; k++) {
    const eighth = Math.floor((8 * k) / size + 0.5);
    const [sine, cosine] = sineAndCosine((360 * k) / size - 45 * eighth);
    const [es, ec] = EIGHTHS[eighth % 8]!;
    re[k] = ec * cosine - es * sine;
    im[k] = es * cosine + ec * sine;
  }
  return { re, im };
}

const HALF = Math.sqrt(0.5);
/** Sine and cosine of the eighths of a turn. */
const EIGHTHS = [
  [0, 1],
  [HALF, HALF],
  [1, 0],
  [HALF, -HALF],
  [0, -1],
  [-HALF, -HALF],
  [-1, 0],
  [-HALF, HALF],
] as const;

/** Transforms of squares whose side is a power of two. Cooley & Tukey, Math. Comp. 19 (1965) 297-301. */
export function fourier(size: number) {
  const { re: cos, im: sin } = turns(size);
  const bits = Math.round(Math.log2(size));
  const order = Uint32Array.from({ length: size }, (_, i) => {
    let turned = 0;
    for (let bit = 0; bit < bits; bit++) if (i & (1 << bit)) turned |= 1 << (bits - 1 - bit);
    return turned;
  });
  const lineRe = new Float64Array(size);
  const lineIm = new Float64Array(size);

  function line({ re, im }: Complex, start: number, step: number, inverse: boolean): void {
    for (let i = 0; i < size; i++) {
      lineRe[i] = re[start + order[i]! * step]!;
      lineIm[i] = im[start + order[i]! * step]!;
    }
    for (let half = 1; half < size; half *= 2) {
      const stride = size / (2 * half);
      for (let block = 0; block < size; block += 2 * half)
        for (let k = 0; k < half; k++) {
          const c = cos[k * stride]!;
          const s = inverse ? sin[k * stride]! : -sin[k * stride]!;
          const [a, b] = [block + k, block + k + half];
          const re2 = lineRe[b]! * c - lineIm[b]! * s;
          const im2 = lineRe[b]! * s + lineIm[b]! * c;
          lineRe[b] = lineRe[a]! - re2;
          lineIm[b] = lineIm[a]! - im2;
          lineRe[a]! += re2;
          lineIm[a]! += im2;
        }
    }
    for (let i = 0; i < size; i++) {
      re[start + i * step] = lineRe[i]!;
      im[start + i * step] = lineIm[i]!;
    }
  }

  /** In place; an inverse is not divided by the number of values. */
  return (square: Complex, inverse: boolean): void => {
    for (let row = 0; row < size; row++) line(square, row * size, 1, inverse);
    for (let column = 0; column < size; column++) line(square, column, size, inverse);
  };
}
