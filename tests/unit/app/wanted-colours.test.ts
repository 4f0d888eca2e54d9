import { describe, expect, it } from 'vitest';
import { gathered } from '../../../src/app/inks/wanted-colours.ts';

describe('wanted colours gathered', () => {
  it('put what is much alike together, the heaviest first', () => {
    expect(
      gathered(
        [
          { lab: [50, 0, 0], weight: 1 },
          { lab: [80, 0, 40], weight: 5 },
          { lab: [52, 1, 1], weight: 7 },
        ],
        10,
      ),
    ).toEqual([
      { lab: [52, 1, 1], weight: 8 },
      { lab: [80, 0, 40], weight: 5 },
    ]);
  });

  it('keep at most so many', () => {
    const many = Array.from({ length: 30 }, (_, i) => ({
      lab: [i * 3, i % 2 ? 40 : -40, 0] as [number, number, number],
      weight: i + 1,
    }));
    expect(gathered(many, 8)).toHaveLength(8);
    expect(gathered(many, 8)[0]!.weight).toBe(30);
  });
});
