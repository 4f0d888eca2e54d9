import { describe, expect, it } from 'vitest';
import { labOfXyz } from '../../../src/ink/lab.ts';
import { screenOf, screenOfXyz } from '../../../src/ink/screen.ts';
import { decodeSrgb, encodeSrgb, xyzOfHex } from '../../../src/ink/srgb.ts';
import { D50 } from '../../../src/ink/weights.ts';

type Matrix = number[][];

const times = (a: Matrix, b: Matrix): Matrix =>
  a.map((row) => b[0]!.map((_, j) => row.reduce((sum, value, k) => sum + value * b[k]![j]!, 0)));

/** Inverse of a 3 x 3 matrix by cofactors. */
function inverse(m: Matrix): Matrix {
  const minor = (i: number, j: number): number => {
    const [a, b] = [0, 1, 2].filter((k) => k !== i) as [number, number];
    const [c, d] = [0, 1, 2].filter((k) => k !== j) as [number, number];
    return (m[a]![c]! * m[b]![d]! - m[a]![d]! * m[b]![c]!) * ((i + j) % 2 ? -1 : 1);
  };
  const determinant = [0, 1, 2].reduce((sum, j) => sum + m[0]![j]! * minor(0, j), 0);
  return m.map((_, i) => m.map((_, j) => minor(j, i) / determinant));
}

const column = (values: readonly number[]): Matrix => values.map((value) => [value]);
const xyzOfXy = (x: number, y: number): number[] => [x / y, 1, (1 - x - y) / y];

describe('sRGB', () => {
  it('has the matrix of its primaries (IEC 61966-2-1), adapted to D50 by Bradford', () => {
    const bradford = [
      [0.8951, 0.2664, -0.1614],
      [-0.7502, 1.7135, 0.0367],
      [0.0389, -0.0685, 1.0296],
    ];
    const primaries = [xyzOfXy(0.64, 0.33), xyzOfXy(0.3, 0.6), xyzOfXy(0.15, 0.06)];
    const white = column(xyzOfXy(0.3127, 0.329));
    const columns = [0, 1, 2].map((i) => primaries.map((primary) => primary[i]!));
    const light = times(inverse(columns), white);
    const toXyz = columns.map((row) => row.map((value, j) => value * light[j]![0]!));
    const from = times(bradford, white);
    const to = times(bradford, column(D50));
    const cones = bradford.map((row, i) => row.map((value) => (value * to[i]![0]!) / from[i]![0]!));
    const adapted = times(times(inverse(bradford), cones), toXyz);
    ['#ff0000', '#00ff00', '#0000ff'].forEach((hex, primary) => {
      xyzOfHex(hex).forEach((value, axis) => {
        expect(value).toBeCloseTo(adapted[axis]![primary]!, 12);
      });
    });
  });

  it('encodes and decodes every byte to itself', () => {
    for (let byte = 0; byte < 256; byte++) {
      expect(255 * encodeSrgb(decodeSrgb(byte / 255))).toBeCloseTo(byte, 3);
    }
  });

  it('refuses a colour that is not #rrggbb and says how to write it', () => {
    expect(() => xyzOfHex('#fff')).toThrow('#fff is not a colour: write it as #rrggbb');
  });
});

describe('colours on the screen', () => {
  it('show the perfect diffuser as #ffffff and no light as #000000', () => {
    expect(screenOf([100, 0, 0])).toEqual({ hex: '#ffffff', onScreen: true });
    expect(screenOf([0, 0, 0])).toEqual({ hex: '#000000', onScreen: true });
  });

  it('come back as the same hex through Lab', () => {
    for (const hex of ['#f58c3f', '#763570', '#00858a', '#0000ff', '#ffff00']) {
      expect(screenOf(labOfXyz(xyzOfHex(hex)))).toEqual({ hex, onScreen: true });
      expect(screenOfXyz(xyzOfHex(hex)).hex).toBe(hex);
    }
  });

  it('are not flagged for less than half a step of 8 bits', () => {
    expect(screenOf([100.1, 0, 0])).toEqual({ hex: '#ffffff', onScreen: true });
    expect(screenOf([100.3, 0, 0])).toEqual({ hex: '#ffffff', onScreen: false });
  });

  it('are flagged and clipped where the screen cannot show them: process cyan', () => {
    const { hex, onScreen } = screenOf([55, -37, -50]);
    expect(onScreen).toBe(false);
    expect(hex).toMatch(/^#00/);
  });
});
