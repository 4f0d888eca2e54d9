import { describe, expect, it } from 'vitest';
import { reduceCoverage, reduceLabels } from '../../../workers/kernels/reduce.ts';
import { digitsOf, emptyLabels, flatPlane, labelsOf, planeOf, rowsOf } from '../support/pictures.ts';

describe('reduced coverage', () => {
  it('is the mean of each box, rounded', () => {
    const to = flatPlane(2, 1);
    reduceCoverage(
      {
        from: planeOf([
          [0, 255, 10, 10],
          [0, 255, 10, 13],
        ]),
        to,
        scale: 2,
      },
      0,
      1,
    );
    expect([...to.data]).toEqual([128, 11]);
  });

  it('averages what is there where the edge cuts a box off', () => {
    const to = flatPlane(2, 2);
    reduceCoverage(
      {
        from: planeOf([
          [0, 0, 100],
          [0, 0, 200],
          [80, 90, 7],
        ]),
        to,
        scale: 2,
      },
      0,
      2,
    );
    expect(rowsOf(to.data, 2)).toEqual([
      [0, 150],
      [85, 7],
    ]);
  });

  it('keeps paper paper and solid solid', () => {
    const to = flatPlane(3, 3, 9);
    reduceCoverage({ from: flatPlane(8, 7, 255), to, scale: 3 }, 0, 3);
    expect(to).toEqual(flatPlane(3, 3, 255));
  });

  it('with a scale of 1 is the same', () => {
    const from = planeOf([
      [1, 2],
      [3, 4],
    ]);
    const to = flatPlane(2, 2);
    reduceCoverage({ from, to, scale: 1 }, 0, 2);
    expect(to).toEqual(from);
  });
});

describe('reduced labels', () => {
  it('are those at the centre of each box, never a mixture', () => {
    const to = emptyLabels(2, 1);
    reduceLabels({ from: labelsOf('111555', '121565', '111555'), to, scale: 3 }, 0, 1);
    expect(digitsOf(to.data, 2)).toEqual(['26']);
  });

  it('of an even box are those just below and right of its centre', () => {
    const to = emptyLabels(2, 1);
    reduceLabels({ from: labelsOf('1234', '5678'), to, scale: 2 }, 0, 1);
    expect(digitsOf(to.data, 2)).toEqual(['68']);
  });

  it('stay within the picture where the edge cuts a box off', () => {
    const to = emptyLabels(2, 2);
    reduceLabels({ from: labelsOf('123', '456', '789'), to, scale: 2 }, 0, 2);
    expect(digitsOf(to.data, 2)).toEqual(['56', '89']);
  });
});
