import { describe, expect, it } from 'vitest';
import { type HandLine, handLines } from '../../../workers/kernels/hand-lines.ts';
import { pixelsAlong } from '../../../workers/kernels/path.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { picture, rowsOf } from '../support/pictures.ts';
import { randomOf } from '../support/random.ts';

function drawn(line: Plane, edits: HandLine[], largest = 30) {
  const { width, height, data } = line;
  const out = new Uint8Array(width * height).fill(7);
  const said = handLines({ line: data, width, height, threshold: 128, edits, reach: 2, largest, out });
  const rows = rowsOf(out, width).map((row) => row.map((value) => (value >= 128 ? '#' : '.')).join(''));
  return { rows, ...said };
}

describe('the pixels along a path', () => {
  it('begin and end where the path does, each beside the one before', () => {
    const random = randomOf(4);
    for (let k = 0; k < 50; k++) {
      const [a, b, c] = Array.from({ length: 3 }, () => [random() * 40, random() * 30] as const);
      const pixels = pixelsAlong([a!, b!, c!], 40, 30);
      const at = ([x, y]: readonly [number, number]) => Math.floor(y) * 40 + Math.floor(x);
      expect(pixels[0]).toBe(at(a!));
      expect(pixels.at(-1)).toBe(at(c!));
      expect(pixels).toContain(at(b!));
      pixels.slice(1).forEach((pixel, i) => {
        const step = Math.abs(pixel - pixels[i]!);
        expect([0, 1, 40]).toContain(step);
      });
    }
  });

  it('leave out what lies outside the picture', () => {
    expect(
      pixelsAlong(
        [
          [-3, 0.5],
          [2.5, 0.5],
        ],
        4,
        2,
      ),
    ).toEqual([0, 1, 2]);
  });
});

describe('a wall drawn by hand', () => {
  it('is line along its path, and says which of its pixels were paper', () => {
    const { rows, walls, refusals } = drawn(picture('.....', '#...#', '.....'), [
      {
        does: 'draw-wall',
        path: [
          [0.5, 1.5],
          [4.5, 1.5],
        ],
      },
    ]);
    expect(rows).toEqual(['.....', '#####', '.....']);
    expect([...walls]).toEqual([6, 7, 8]);
    expect(refusals).toEqual([null]);
  });

  it('has no place outside the picture', () => {
    const edits: HandLine[] = [
      {
        does: 'draw-wall',
        path: [
          [9, 9],
          [12, 9],
        ],
      },
    ];
    expect(drawn(picture('...', '...'), edits).refusals).toEqual(['no-region']);
  });
});

describe('a cut', () => {
  const box = picture('.......', '#######', '#.....#', '#.....#', '#######', '.......');

  it('goes on to the line on either side, and no farther', () => {
    const { rows } = drawn(box, [
      {
        does: 'cut',
        path: [
          [3.5, 2.2],
          [3.5, 3.4],
        ],
      },
    ]);
    expect(rows).toEqual(['.......', '#######', '#..#..#', '#..#..#', '#######', '.......']);
  });

  it('cuts only the region under the middle of its path', () => {
    const { rows } = drawn(box, [
      {
        does: 'cut',
        path: [
          [3.5, 0.5],
          [3.5, 5.5],
        ],
      },
    ]);
    expect(rows).toEqual(['.......', '#######', '#..#..#', '#..#..#', '#######', '.......']);
  });

  it('has no place when its middle is on line', () => {
    expect(
      drawn(box, [
        {
          does: 'cut',
          path: [
            [0.5, 1.5],
            [6.5, 1.5],
          ],
        },
      ]).refusals,
    ).toEqual(['no-region']);
  });

  it('goes on to the frame, however short the path', () => {
    const { rows } = drawn(picture('....', '....', '....'), [
      {
        does: 'cut',
        path: [
          [1.5, 1.2],
          [1.5, 1.4],
        ],
      },
    ]);
    expect(rows).toEqual(['.#..', '.#..', '.#..']);
  });
});

describe('a mark that is ignored', () => {
  const marks = picture('.......', '.##....', '..#...#', '......#', '......#');

  it('goes as a whole, from the place nearest to the hand', () => {
    const { rows, refusals } = drawn(marks, [{ does: 'ignore-mark', at: [0.4, 0.4] }]);
    expect(rows).toEqual(['.......', '.......', '......#', '......#', '......#']);
    expect(refusals).toEqual([null]);
  });

  it('has no place where none is near', () => {
    expect(drawn(marks, [{ does: 'ignore-mark', at: [1.5, 4.9] }]).refusals).toEqual(['no-mark']);
  });

  it('is refused, and left, when it is no speck', () => {
    const { rows, refusals } = drawn(marks, [{ does: 'ignore-mark', at: [6.5, 3.5] }], 2);
    expect(refusals).toEqual(['large-mark']);
    expect(rows).toEqual(['.......', '.##....', '..#...#', '......#', '......#']);
  });
});
