import { describe, expect, it } from 'vitest';
import { dominantFinder } from '../../../workers/kernels/dominant-colour.ts';
import { randomOf, shuffled } from '../support/random.ts';

const dominant = (colours: readonly number[]) => dominantFinder()(Uint32Array.from(colours));
const many = (count: number, colour: number) => new Array<number>(count).fill(colour);

describe('the colour that most of an area has', () => {
  it('is its one colour', () => {
    expect(dominant([0xe8a080])).toBe(0xe8a080);
    expect(dominant(many(500, 0xffffff))).toBe(0xffffff);
    expect(dominant(many(500, 0))).toBe(0);
  });

  it('is not tinted by a line across it, though that is a third of it', () => {
    expect(dominant([...many(35, 0x1e1c19), ...many(65, 0xe8a080)])).toBe(0xe8a080);
  });

  it('is the larger of two', () => {
    expect(dominant([...many(45, 0x205060), ...many(55, 0xd0e0f0)])).toBe(0xd0e0f0);
  });

  it('is the middle of noise around it, wherever it lies among the cubes', () => {
    const random = randomOf(5);
    for (const centre of [0x808080, 0x7f7f7f, 0xfbe0d0, 0x040404]) {
      const noisy = many(2000, centre).map((colour) =>
        [16, 8, 0].reduce((sum, shift) => {
          const value = ((colour >> shift) & 255) + Math.round((random() + random() - 1) * 12);
          return sum | (Math.min(255, Math.max(0, value)) << shift);
        }, 0),
      );
      const found = dominant([...noisy, ...many(800, 0x303030)]);
      for (const shift of [16, 8, 0])
        expect(Math.abs(((found >> shift) & 255) - ((centre >> shift) & 255))).toBeLessThanOrEqual(2);
    }
  });

  it('is the middle of all where no colour prevails', () => {
    const shade = Array.from({ length: 256 }, (_, i) => (i << 16) | (i << 8) | i);
    expect(dominant(shade)).toBe(0x7f7f7f);
  });

  it('does not depend on the order, and a finder may be used again', () => {
    const colours = [...many(40, 0x102030), ...many(40, 0xf0e0d0), ...many(20, 0x80a0c0)];
    const find = dominantFinder();
    const first = find(Uint32Array.from(colours));
    expect(find(Uint32Array.from(many(3, 0x445566)))).toBe(0x445566);
    expect(find(Uint32Array.from(shuffled(colours, 3)))).toBe(first);
    expect(first).toBe(0x102030);
  });
});
