import { describe, expect, it } from 'vitest';
import { labelEdges } from '../../../workers/kernels/label-edges.ts';
import type { LabelPlane } from '../../../workers/kernels/plane.ts';
import { roughColours } from '../../../workers/kernels/rough-colours.ts';
import { roughPlace, UNMOVED } from '../../../workers/kernels/rough-place.ts';
import { type RoughPicture, shrinkRough } from '../../../workers/kernels/shrink-rough.ts';
import { emptyLabels, flatPlane, labelsOf, rowsOf, sharedBytes } from '../support/pictures.ts';

/** Squared distances to the edges that `labelEdges` marks, from each pixel to each. */
function distancesOf(labels: LabelPlane): Uint32Array {
  const { width, height } = labels;
  const edges = flatPlane(width, height);
  labelEdges({ labels, out: edges }, 0, height);
  const marks: [number, number][] = [];
  edges.data.forEach((edge, i) => {
    if (edge) marks.push([i % width, Math.floor(i / width)]);
  });
  return Uint32Array.from(edges.data, (_, i) =>
    Math.min(10_000, ...marks.map(([x, y]) => ((i % width) - x) ** 2 + (Math.floor(i / width) - y) ** 2)),
  );
}

type Paint = (x: number, y: number) => number | null;

function roughOf(width: number, height: number, paint: Paint): RoughPicture {
  const rgba = sharedBytes(width * height * 4);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const colour = paint(x, y);
      const value = colour ?? 0xffffff;
      rgba.set(
        [value >> 16, (value >> 8) & 255, value & 255, colour === null ? 0 : 255],
        (y * width + x) * 4,
      );
    }
  return { width, height, rgba };
}

function coloursOf(labels: LabelPlane, count: number, rough: RoughPicture, inward = 3): number[] {
  const { data, width, height } = labels;
  const place = roughPlace(labels, rough, UNMOVED, true);
  const distance2 = distancesOf(labels);
  const found = roughColours({ labels: data, width, height, count, distance2, inward, rough, place });
  return [...found.subarray(1)];
}

/** Two fields side by side, 20 px each. */
function twoFields(): LabelPlane {
  const labels = emptyLabels(40, 20);
  labels.data.forEach((_, i) => {
    labels.data[i] = i % 40 < 20 ? 1 : 2;
  });
  return labels;
}

describe('edges of regions', () => {
  it('are where the next pixel is of another, and where there is none', () => {
    const labels = labelsOf('1122', '1122', '11.2', '3332');
    const out = flatPlane(4, 4);
    labelEdges({ labels, out }, 0, 4);
    expect(rowsOf(out.data, 4)).toEqual([
      [0, 255, 0, 0],
      [0, 255, 255, 0],
      [255, 255, 255, 0],
      [0, 0, 255, 0],
    ]);
  });
});

describe('colours of regions in a rough', () => {
  it('are taken inside: lines on their border do not count', () => {
    const rough = roughOf(40, 20, (x) => (Math.abs(x - 19.5) < 3 ? 0x201010 : x < 20 ? 0xd08060 : 0x6080d0));
    expect(coloursOf(twoFields(), 2, rough)).toEqual([0xd08060, 0x6080d0]);
  });

  it('are found in regions of a pixel and of a thread', () => {
    const labels = labelsOf('1111111', '1211333', '1111111');
    const rough = roughOf(7, 3, (x, y) =>
      y === 1 && x === 1 ? 0x112233 : y === 1 && x > 3 ? 0x445566 : 0xffeedd,
    );
    expect(coloursOf(labels, 3, rough)).toEqual([0xffeedd, 0x112233, 0x445566]);
  });

  it('are none where less than a fifth is painted', () => {
    const tenth = roughOf(40, 20, (x, y) => (x < 20 ? (y < 2 ? 0xaa0000 : null) : 0x00aa00));
    expect(coloursOf(twoFields(), 2, tenth, 0)).toEqual([-1, 0x00aa00]);
    const third = roughOf(40, 20, (x, y) => (x < 20 ? (y < 8 ? 0xaa0000 : null) : 0x00aa00));
    expect(coloursOf(twoFields(), 2, third, 0)).toEqual([0xaa0000, 0x00aa00]);
  });

  it('are none where the rough does not reach, and none for labels without pixels', () => {
    const labels = twoFields();
    const rough = roughOf(40, 20, () => 0x336699);
    const place = roughPlace(labels, rough, { ...UNMOVED, shiftX: -0.5 }, true);
    const args = { labels: labels.data, width: 40, height: 20, count: 3, distance2: distancesOf(labels) };
    expect([...roughColours({ ...args, inward: 3, rough, place })]).toEqual([-1, 0x336699, -1, -1]);
  });

  it('are taken from a part of large regions, evenly', () => {
    const labels = emptyLabels(300, 200);
    labels.data.fill(1);
    const distance2 = new Uint32Array(60_000).fill(99);
    const rough = roughOf(300, 200, (_, y) => (y < 90 ? 0x101010 : 0xf0f0f0));
    const place = roughPlace(labels, rough, UNMOVED, true);
    const args = { labels: labels.data, width: 300, height: 200, count: 1, distance2, inward: 3 };
    expect(roughColours({ ...args, rough, place })[1]).toBe(0xf0f0f0);
  });
});

describe('a rough made smaller', () => {
  const shrunk = (pixels: number[], width: number, height: number, bands: number, scale: number) => {
    const size = { width: Math.ceil(width / scale), height: Math.ceil(height / scale) };
    const to = { ...size, rgba: sharedBytes(size.width * size.height * 4) };
    shrinkRough({ pixels: Uint8Array.from(pixels), width, height, bands, scale, to }, 0, size.height);
    return rowsOf(to.rgba, 4);
  };

  it('has the means of boxes, and of what is left of them at the edge', () => {
    expect(shrunk([0, 100, 50, 50, 100, 90], 3, 2, 1, 2)).toEqual([
      [63, 63, 63, 255],
      [70, 70, 70, 255],
    ]);
  });

  it('reads grey, grey and alpha, RGB, RGB and alpha', () => {
    expect(shrunk([7], 1, 1, 1, 1)).toEqual([[7, 7, 7, 255]]);
    expect(shrunk([7, 255], 1, 1, 2, 1)).toEqual([[7, 7, 7, 255]]);
    expect(shrunk([1, 2, 3], 1, 1, 3, 1)).toEqual([[1, 2, 3, 255]]);
    expect(shrunk([1, 2, 3, 255], 1, 1, 4, 1)).toEqual([[1, 2, 3, 255]]);
  });

  it('shows thin paint on white and leaves out what is thinner than half', () => {
    expect(shrunk([0, 0, 0, 153], 1, 1, 4, 1)).toEqual([[102, 102, 102, 255]]);
    expect(shrunk([0, 0, 0, 127], 1, 1, 4, 1)).toEqual([[255, 255, 255, 0]]);
  });

  it('takes colours from what is painted of a box, and is bare where most of it is', () => {
    const red = [200, 0, 0, 255];
    const none = [0, 0, 0, 0];
    expect(shrunk([...red, ...none], 2, 1, 4, 2)).toEqual([red]);
    expect(shrunk([...red, ...none, ...none], 3, 1, 4, 3)).toEqual([[255, 255, 255, 0]]);
  });
});
