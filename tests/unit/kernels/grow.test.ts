import { describe, expect, it } from 'vitest';
import { columnDistance } from '../../../workers/kernels/distance.ts';
import { grow } from '../../../workers/kernels/grow.ts';
import type { LabelPlane } from '../../../workers/kernels/plane.ts';
import { digitsOf, emptyLabels, labelsOf } from '../support/pictures.ts';
import { randomOf } from '../support/random.ts';

function grown(labels: LabelPlane, reach2: number): Uint32Array {
  const { width, height, data } = labels;
  const sites = Uint8Array.from(data, (label) => (label === 0 ? 0 : 1));
  const columns = new Uint16Array(width * height);
  const limit = Math.ceil(Math.sqrt(reach2));
  columnDistance(
    { data: sites, width, height, lowest: 1, highest: 1, limit, framed: false, out: columns },
    0,
    width,
  );
  const out = new Uint32Array(width * height).fill(99);
  const names = Uint32Array.from({ length: 100 }, (_, label) => label);
  grow({ labels: data, names, columns, width, height, reach2, out }, 0, height);
  return out;
}

const digits = (labels: LabelPlane, reach2: number) => digitsOf(grown(labels, reach2), labels.width);

/** The label of the nearest labelled pixel within reach, of equals the lowest, by looking at them all. */
function searched({ width, data }: LabelPlane, reach2: number): Uint32Array {
  const out = new Uint32Array(data.length);
  for (let i = 0; i < data.length; i++) {
    let best = reach2;
    for (let j = 0; j < data.length; j++) {
      if (data[j] === 0) continue;
      const d2 = ((i % width) - (j % width)) ** 2 + (Math.floor(i / width) - Math.floor(j / width)) ** 2;
      if (d2 > best) continue;
      out[i] = d2 < best || out[i] === 0 ? data[j]! : Math.min(out[i]!, data[j]!);
      best = d2;
    }
  }
  return out;
}

describe('grow', () => {
  it('meets in the middle of a line, the lower label taking the middle pixel', () => {
    expect(digits(labelsOf('22...11'), 100)).toEqual(['2221111']);
    expect(digits(labelsOf('11...22'), 100)).toEqual(['1111222']);
  });

  it('meets in the middle of a line that lies flat', () => {
    expect(digits(labelsOf('2', '.', '.', '.', '1'), 100)).toEqual(['2', '2', '1', '1', '1']);
  });

  it('goes to the nearest as the crow flies, not along rows and columns', () => {
    // the third pixel of the third row lies sqrt(8) px from label 1, and 2, then 3 px from label 2
    expect(digits(labelsOf('1.....', '......', '....2.'), 100)[2]![2]).toBe('2');
    expect(digits(labelsOf('1.....', '......', '.....2'), 100)[2]![2]).toBe('1');
  });

  it('reaches as far as it may and no farther', () => {
    expect(digits(labelsOf('1......'), 9)).toEqual(['1111...']);
    expect(digits(labelsOf('1......'), 8.99)).toEqual(['111....']);
    expect(digits(labelsOf('....', '.1..', '....'), 1)).toEqual(['.1..', '111.', '.1..']);
    expect(digits(labelsOf('....', '.1..', '....'), 2)).toEqual(['111.', '111.', '111.']);
  });

  it('changes no pixel that has a label', () => {
    expect(digits(labelsOf('1212', '3434'), 100)).toEqual(['1212', '3434']);
  });

  it('does nothing with a reach of 0, and nothing where there are no labels', () => {
    expect(digits(labelsOf('1..2'), 0)).toEqual(['1..2']);
    expect(digits(labelsOf('....'), 100)).toEqual(['....']);
  });

  it.each([
    [0.005, 400],
    [0.02, 30.5],
    [0.1, 10],
    [0.5, 2],
  ])('equals a search over all labelled pixels: %d of them labelled, reach2 %d', (density, reach2) => {
    const random = randomOf(Math.round(density * 1000));
    const labels = emptyLabels(37, 29);
    for (let i = 0; i < labels.data.length; i++)
      labels.data[i] = random() < density ? 1 + Math.floor(random() * 9) : 0;
    expect(grown(labels, reach2)).toEqual(searched(labels, reach2));
  });
});
