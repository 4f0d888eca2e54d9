import { describe, expect, it } from 'vitest';
import { countLabels } from '../../../workers/kernels/count-labels.ts';
import { measureRegions } from '../../../workers/kernels/measure-regions.ts';
import { relabel } from '../../../workers/kernels/relabel.ts';
import { digitsOf, labelsOf } from '../support/pictures.ts';

const LABELS = labelsOf('......', '.11.2.', '.11...', '......', '....33');
const DEPTHS = ['000000', '012010', '011000', '000000', '000011'].join('');

const measures = measureRegions({
  labels: LABELS.data,
  names: Uint32Array.of(0, 1, 2, 3),
  distance2: Uint32Array.from([...DEPTHS], Number),
  width: 6,
  height: 5,
  count: 3,
});

describe('the measures of regions', () => {
  it('are their free pixels', () => {
    expect([...measures.area]).toEqual([0, 4, 1, 2]);
  });

  it('are the box around them, its right and bottom one past the last pixel', () => {
    const box = (label: number) => [
      measures.left[label],
      measures.top[label],
      measures.right[label],
      measures.bottom[label],
    ];
    expect([1, 2, 3].map(box)).toEqual([
      [1, 1, 3, 3],
      [4, 1, 5, 2],
      [4, 4, 6, 5],
    ]);
  });

  it('are the pixel farthest from any line, of equals the first', () => {
    expect([...measures.anchor].slice(1)).toEqual([6 + 2, 6 + 4, 24 + 4]);
  });

  it('say how far a region runs along a side of the frame', () => {
    expect([...measures.frameRun].slice(1)).toEqual([0, 0, 2]);
    const corners = labelsOf('1.2', '...', '3.4');
    const found = measureRegions({
      labels: corners.data,
      names: Uint32Array.of(0, 1, 2, 3, 4),
      distance2: new Uint32Array(9).fill(1),
      width: 3,
      height: 3,
      count: 4,
    });
    expect([...found.frameRun]).toEqual([0, 1, 1, 1, 1]);
  });
});

describe('labels', () => {
  it('are counted by label', () => {
    expect([...countLabels({ labels: LABELS.data, count: 3 })]).toEqual([23, 4, 1, 2]);
  });

  it('are renamed by a table', () => {
    const to = new Uint32Array(30).fill(9);
    relabel({ from: LABELS.data, to, width: 6, table: Uint32Array.of(0, 2, 2, 1) }, 0, 5);
    expect(digitsOf(to, 6)).toEqual(['......', '.22.2.', '.22...', '......', '....11']);
  });
});
