import { describe, expect, it } from 'vitest';
import { fill } from '../../../workers/kernels/fill.ts';
import { printLine } from '../../../workers/kernels/print-line.ts';
import { within } from '../../../workers/kernels/within.ts';
import { flatPlane, labelsOf, planeOf, rowsOf } from '../support/pictures.ts';

describe('fill', () => {
  it('lays the tint of each region on each plate, and nothing where there is no region', () => {
    const labels = labelsOf('112', '.22');
    const plates = [
      { out: flatPlane(3, 2, 9), tints: Uint8Array.of(0, 100, 200) },
      { out: flatPlane(3, 2, 9), tints: Uint8Array.of(0, 0, 255) },
    ];
    fill({ labels, plates, fades: [] }, 0, 2);
    expect(plates.map(({ out }) => rowsOf(out.data, 3))).toEqual([
      [
        [100, 100, 200],
        [0, 200, 200],
      ],
      [
        [0, 0, 255],
        [0, 255, 255],
      ],
    ]);
  });
});

describe('the line printed on a plate', () => {
  const print = (fills: number[], line: number[], tint: number, knockout: number[] | null) => {
    const out = flatPlane(fills.length, 1, 9);
    printLine(
      { fill: planeOf([fills]), line: planeOf([line]), knockout: knockout && planeOf([knockout]), tint, out },
      0,
      1,
    );
    return [...out.data];
  };

  it('over kept fills is the greater of both: 40 % over 70 % is 70 %', () => {
    const percent = (value: number) => Math.round(value * 2.55);
    expect(print([percent(70)], [255], percent(40), null)).toEqual([percent(70)]);
    expect(print([percent(40)], [255], percent(70), null)).toEqual([percent(70)]);
  });

  it('over kept fills leaves them whole at its soft edge', () => {
    expect(print([100, 100, 100, 100], [0, 60, 200, 255], 255, null)).toEqual([100, 100, 200, 255]);
  });

  it('knocks fills out as far as the knockout says, and adds the line', () => {
    expect(print([200, 200, 200], [255, 255, 255], 0, [0, 128, 255])).toEqual([200, 100, 0]);
    expect(print([200, 200, 200], [0, 255, 255], 100, [0, 128, 255])).toEqual([200, 200, 100]);
  });

  it('never prints more than solid', () => {
    expect(print([200, 255], [200, 255], 255, [0, 0])).toEqual([255, 255]);
  });

  it('prints at its tint: the soft edge at its share of it', () => {
    expect(print([0, 0, 0], [0, 128, 255], 51, null)).toEqual([0, 26, 51]);
  });

  it('with a tint of 0 prints nothing', () => {
    expect(print([0, 10], [255, 255], 0, null)).toEqual([0, 10]);
  });
});

describe('a change within an area', () => {
  it('holds where the area is full, by half where it is half, and elsewhere not', () => {
    const out = flatPlane(4, 1, 9);
    const args = {
      before: planeOf([[100, 100, 100, 0]]),
      after: planeOf([[200, 200, 200, 255]]),
      mask: planeOf([[0, 255, 51, 255]]),
      out,
    };
    within(args, 0, 1);
    expect([...out.data]).toEqual([100, 200, 120, 255]);
  });
});
