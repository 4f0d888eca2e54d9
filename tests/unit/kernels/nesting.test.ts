import { describe, expect, it } from 'vitest';
import { surroundings } from '../../../workers/kernels/nesting.ts';
import { randomOf } from '../support/random.ts';

/** Pairs of places, "1-2 2-3". */
function pairsOf(text: string) {
  const pairs = text === '' ? [] : text.split(' ').map((pair) => pair.split('-').map(Number));
  return { a: pairs.map(([a]) => a!), b: pairs.map(([, b]) => b!) };
}

const around = (count: number, neighbours: string, atFrame: number[]) => [
  ...surroundings(count, pairsOf(neighbours), atFrame).slice(1),
];

describe('the region around a region', () => {
  it('is none for what reaches the frame', () => {
    expect(around(2, '1-2', [1, 2])).toEqual([0, 0]);
  });

  it('is the one that every way to the frame leads through, the nearest of several', () => {
    expect(around(4, '1-2 2-3 3-4', [1])).toEqual([0, 1, 2, 3]);
  });

  it('is around all parts of what lies in it together', () => {
    expect(around(5, '1-2 1-3 2-3 2-4 3-4 2-5 3-5 4-5', [1])).toEqual([0, 1, 1, 1, 1]);
  });

  it('is none where ways lead past on both sides', () => {
    expect(around(4, '1-2 1-3 2-4 3-4', [1, 2])).toEqual([0, 0, 0, 0]);
  });

  it('is none for what no way leads to', () => {
    expect(around(3, '2-3', [1])).toEqual([0, 0, 0]);
  });

  /** The last place on every way from the frame: the nearest one whose removal cuts the way off. */
  function searched(count: number, { a, b }: ReturnType<typeof pairsOf>, atFrame: number[]): number[] {
    const reached = (without: number) => {
      const seen = new Set(atFrame.filter((place) => place !== without));
      for (const place of seen)
        a.forEach((p, k) => {
          for (const [from, to] of [
            [p, b[k]!],
            [b[k]!, p],
          ])
            if (from === place && to !== without) seen.add(to!);
        });
      return seen;
    };
    const all = reached(0);
    const cutters = (place: number) =>
      Array.from({ length: count }, (_, i) => i + 1).filter(
        (other) => other !== place && all.has(place) && all.has(other) && !reached(other).has(place),
      );
    return Array.from({ length: count }, (_, i) => {
      const mine = cutters(i + 1);
      return mine.find((one) => mine.every((other) => other === one || cutters(one).includes(other))) ?? 0;
    });
  }

  it('is what removing one place after another shows, in any graph', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const random = randomOf(seed);
      const count = 2 + Math.floor(random() * 12);
      const pairs: string[] = [];
      for (let a = 1; a <= count; a++)
        for (let b = a + 1; b <= count; b++) if (random() < 0.22) pairs.push(`${a}-${b}`);
      const atFrame = [1, 2].filter(() => random() < 0.7);
      const neighbours = pairs.join(' ');
      expect(around(count, neighbours, atFrame), neighbours).toEqual(
        searched(count, pairsOf(neighbours), atFrame),
      );
    }
  });

  it('takes no recursion: a chain of 200,000', () => {
    const count = 200_000;
    const a = Uint32Array.from({ length: count - 1 }, (_, i) => i + 1);
    const found = surroundings(count, { a, b: a.map((i) => i + 1) }, [1]);
    expect(found[count]).toBe(count - 1);
  });
});
