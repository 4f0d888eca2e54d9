import { describe, expect, it } from 'vitest';
import {
  bandFaults,
  meshFaults,
  moireFaults,
  type ScreenedPlate,
} from '../../../src/press/check/screen-faults.ts';
import { pressOf } from '../../../src/press/profiles.ts';

const am = (
  id: string,
  lpi: number,
  angleDeg: number,
  how: 'screened' | 'planned' = 'planned',
): ScreenedPlate => ({
  id,
  screen: { how, kind: 'am', lpi, angleDeg, dot: 'round', toneApplied: false },
});
const told = (...plates: ScreenedPlate[]) => moireFaults(plates).map(({ code, measure }) => [code, measure]);

describe('two screens', () => {
  /** Values of case 12: 2 L sin(d/2) and the difference of rulings. */
  it('5 degrees apart at 45 lpi beat every 6.5 mm, which is seen', () => {
    expect(told(am('a', 45, 45), am('b', 45, 50))).toEqual([['moire', 6.5]]);
  });

  it('30 degrees apart beat too finely to be seen', () => {
    expect(told(am('a', 45, 45), am('b', 45, 75))).toEqual([]);
  });

  it('of 45 and 50 lpi at one angle beat every 5.1 mm, which is seen', () => {
    expect(told(am('a', 45, 45), am('b', 50, 45))).toEqual([['moire', 5.1]]);
  });

  it('that are alike move their colour with the register', () => {
    expect(told(am('a', 45, 45), am('b', 45, 135))).toEqual([['screens-alike', undefined]]);
  });

  it('of which one has dots of one size do not beat', () => {
    expect(
      told(am('a', 45, 45), {
        id: 'b',
        screen: { how: 'screened', kind: 'fm', dotMm: 0.1, toneApplied: false },
      }),
    ).toEqual([]);
  });
});

describe('a fade', () => {
  const region = {
    id: 'r1',
    areaMm2: 100,
    anchorMm: [5, 5] as const,
    recipe: {},
    fade: {
      shape: 'linear' as const,
      from: { a: 20 },
      to: { a: 40 },
      pathMm: [
        [0, 0],
        [100, 0],
      ] as [number, number][],
    },
  };

  it('from 20 to 40 % over 100 mm at 85 lpi and 600 dpi shows 10 steps of 10 mm (case 13)', () => {
    const [fault] = bandFaults([am('a', 85, 45)], [region], 600);
    expect(fault).toMatchObject({ code: 'fade-bands', measure: 10, region: 'r1' });
    expect(fault!.message).toContain('10 steps');
  });

  it('screened here has finer steps, and one on another plate does not matter', () => {
    expect(bandFaults([am('a', 85, 45, 'screened')], [region], 600)).toEqual([]);
    expect(bandFaults([am('b', 85, 45)], [region], 600)).toEqual([]);
  });
});

it('a mesh of fewer than four threads a dot is too coarse', () => {
  const press = (threads: number) => ({
    ...pressOf('own'),
    figures: { meshPerCm: { value: threads, source: 'own-test' as const } },
  });
  expect(meshFaults([am('a', 45, 45)], press(70)).map(({ measure }) => measure)).toEqual([4]);
  expect(meshFaults([am('a', 45, 45)], press(77))).toEqual([]);
  expect(meshFaults([am('a', 45, 45)], pressOf('own'))).toEqual([]);
});
