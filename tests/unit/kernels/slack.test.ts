import { describe, expect, it } from 'vitest';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { plateSets } from '../../../workers/kernels/plate-sets.ts';
import { setEdges } from '../../../workers/kernels/set-edges.ts';
import { offsetOf, slack } from '../../../workers/kernels/slack.ts';
import { toChange } from '../../../workers/kernels/to-change.ts';
import { drawnPlane, randomPicture } from '../support/pictures.ts';
import { randomOf } from '../support/random.ts';
import { slowSlack } from '../support/slow-slack.ts';

/** Squared drifts at which one plate first shows a fault, 0 where none does. */
function drifts(plates: readonly Plane[], plate: number, reach: number): number[] {
  const { width, height, data } = plates[plate]!;
  const sets = setsOf(plates);
  const distances = new Uint8Array(data.length);
  toChange({ data, width, height, least: 20, limit: reach, out: distances }, 0, width);
  const out = new Uint16Array(data.length);
  const edges = new Uint8Array(data.length);
  setEdges({ sets, width, height, out: edges }, 0, height);
  const args = {
    sets,
    edges,
    width,
    height,
    plate,
    toChange: distances,
    reach,
    out,
  };
  slack(args, 0, height);
  return [...out].map((packed) => {
    const [dx, dy] = offsetOf(packed);
    return packed === 0 ? 0 : dx * dx + dy * dy;
  });
}

function setsOf(plates: readonly Plane[]): Uint16Array {
  const sets = new Uint16Array(plates[0]!.data.length);
  plateSets({ plates, least: 20, out: sets }, 0, plates[0]!.height);
  return sets;
}

/** Discs of every plate at random places: fills that overlap, touch and stand alone. */
function discs(count: number, seed: number): Plane[] {
  const [width, height] = [48, 40];
  const random = randomOf(seed);
  return Array.from({ length: count }, () => {
    const round = Array.from(
      { length: 4 },
      () => [random() * width, random() * height, 3 + random() * 8] as const,
    );
    return drawnPlane(width, height, (x, y) =>
      round.some(([u, v, r]) => Math.hypot(x - u, y - v) < r) ? 255 : 0,
    );
  });
}

describe('how far along a column ink ends or begins', () => {
  it.each([
    [36, 0.5],
    [37, 0.02],
    [64, 0.002],
  ])('is what a search along the column finds (%d px wide, %d inked)', (width, density) => {
    const { height, data } = randomPicture(width, 70, density, width);
    const out = new Uint8Array(data.length).fill(9);
    toChange({ data, width, height, least: 20, limit: 12, out }, 0, width);
    const slow = [...data.keys()].map((i) => {
      const change = (step: number) => {
        for (let k = 1; k <= 12; k++) {
          const at = i + k * step;
          if (at < 0 || at >= data.length) return 255;
          if (data[at]! >= 20 !== data[i]! >= 20) return k;
        }
        return 255;
      };
      return Math.min(change(width), change(-width));
    });
    expect([...out]).toEqual(slow);
  });
});

describe('the drift at which a fault first shows', () => {
  it.each([1, 2, 3, 4, 5, 6])('is what shifting the plate itself finds, on fills (%d)', (seed) => {
    const plates = discs(3, seed);
    const { width, height } = plates[0]!;
    plates.forEach((_, plate) => {
      const found = drifts(plates, plate, 9);
      expect(found).toEqual(slowSlack(setsOf(plates), width, height, plate, 9));
      expect(found.some((d2) => d2 > 0)).toBe(true);
    });
  });

  it.each([7, 8])('is what shifting the plate itself finds, on dust (%d)', (seed) => {
    const plates = [randomPicture(31, 27, 0.4, seed), randomPicture(31, 27, 0.05, seed + 20)];
    for (const plate of [0, 1])
      expect(drifts(plates, plate, 6)).toEqual(slowSlack(setsOf(plates), 31, 27, plate, 6));
  });

  const row = (...runs: [plates: string, px: number][]): Plane[] =>
    ['a', 'b'].map((name) => {
      const values = runs.flatMap(([plates, px]) =>
        new Array<number>(px).fill(plates.includes(name) ? 255 : 0),
      );
      return drawnPlane(values.length, 1, (x) => values[x]!);
    });
  /** Pixels of drift after which a fault shows; null where none does. */
  const slackOf = (plates: Plane[], plate = 0) => {
    const least = Math.min(...drifts(plates, plate, 30).filter((d2) => d2 > 0));
    return Number.isFinite(least) ? Math.sqrt(least) - 1 : null;
  };

  it('is none for fills that only touch', () => {
    expect(slackOf(row(['a', 40], ['b', 40]))).toBe(0);
  });

  it('is the overlap for fills that are trapped', () => {
    expect(slackOf(row(['a', 40], ['ab', 8], ['b', 40]))).toBe(8);
  });

  it('is without end for a fill that stands on paper alone, or lies wholly on another', () => {
    expect(slackOf(row(['', 40], ['a', 40]))).toBe(null);
    expect(slackOf(row(['b', 40], ['ab', 40], ['b', 40]))).toBe(null);
  });

  it('is how far a support stays back beside paper, for it and for the ink that makes the edge', () => {
    expect(slackOf(row(['', 40], ['a', 8], ['ab', 40]), 0)).toBe(8);
    expect(slackOf(row(['', 40], ['a', 8], ['ab', 40]), 1)).toBe(8);
  });

  it('is the width of a white line between two fills before they overlap, never less', () => {
    expect(slackOf(row(['a', 40], ['', 5], ['b', 40]))).toBe(5);
  });
});
