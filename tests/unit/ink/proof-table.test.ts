import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ink } from '../../../src/graph/inks.ts';
import { differenceOf } from '../../../src/ink/difference.ts';
import { labOfXyz } from '../../../src/ink/lab.ts';
import { type PrintModel, printModel } from '../../../src/ink/model.ts';
import { type ProofTable, proofTable } from '../../../src/ink/proof-table.ts';
import type { Xyz } from '../../../src/ink/spectrum.ts';
import { anyTint, inkOf, SHELF, WHITE_COATED, WHITE_UNCOATED } from './inks.ts';

const NEWSPRINT = { lab: [85, 1, 5] as [number, number, number], surface: 'newsprint' as const };

/** Multilinear interpolation in the table, as a proof does it. */
function lookUp({ count, size, data }: ProofTable, tints: readonly number[]): Xyz {
  const cells = tints.map((tint) => Math.min(size - 2, Math.floor(tint * (size - 1))));
  const result: Xyz = [0, 0, 0];
  for (let corner = 0; corner < 2 ** count; corner++) {
    let weight = 1;
    let node = 0;
    for (let ink = count - 1; ink >= 0; ink--) {
      const high = (corner >> ink) & 1;
      const share = tints[ink]! * (size - 1) - cells[ink]!;
      weight *= high ? share : 1 - share;
      node = node * size + cells[ink]! + high;
    }
    for (let axis = 0; axis < 3; axis++) result[axis]! += weight * data[3 * node + axis]!;
  }
  return result;
}

/** CIEDE2000 between table and model on random 8-bit tints: mean and greatest. */
function errorsOf(model: PrintModel): { mean: number; max: number } {
  const table = proofTable(model);
  const recipes = fc.sample(fc.array(anyTint, { minLength: model.count, maxLength: model.count }), {
    numRuns: 2000,
    seed: 7,
  });
  const errors = recipes.map((tints) => {
    const [x, y, z] = lookUp(table, tints);
    return differenceOf(labOfXyz([x * x, y * y, z * z]), model.labOf(tints));
  });
  return { mean: errors.reduce((sum, error) => sum + error, 0) / errors.length, max: Math.max(...errors) };
}

/** FNV-1a over the bytes of the table. */
function fingerprint(data: Float32Array): string {
  let hash = 0x811c9dc5;
  for (const byte of new Uint8Array(data.buffer)) hash = Math.imul(hash ^ byte, 0x01000193) >>> 0;
  return hash.toString(16).padStart(8, '0');
}

describe('the proof table', () => {
  it('has 256, 65, 33, 17, 9 nodes on each axis for 1 to 5 inks', () => {
    const sizes = [1, 2, 3, 4, 5].map((count) => {
      const { size, data } = proofTable(printModel({ paper: WHITE_COATED, inks: SHELF.slice(0, count) }));
      expect(data).toHaveLength(size ** count * 3);
      return size;
    });
    expect(sizes).toEqual([256, 65, 33, 17, 9]);
  });

  it('varies the first ink fastest, from paper to all solids', () => {
    const model = printModel({ paper: WHITE_COATED, inks: SHELF.slice(0, 3) });
    const { data, size } = proofTable(model);
    const node = (at: number): number[] => [...data.subarray(3 * at, 3 * at + 3)];
    const expectNode = (at: number, tints: number[]): void => {
      node(at).forEach((value, axis) => {
        expect(Math.abs(value - model.rootXyzOf(tints)[axis]!)).toBeLessThan(1 / 65_535);
      });
    };
    expectNode(0, [0, 0, 0]);
    expectNode(size - 1, [1, 0, 0]);
    expectNode(size * (size - 1), [0, 1, 0]);
    expectNode(size * size * 16, [0, 0, 0.5]);
    expectNode(size ** 3 - 1, [1, 1, 1]);
  });

  it.each([
    [1, 0.002, 0.008],
    [2, 0.003, 0.008],
    [3, 0.007, 0.02],
    [4, 0.03, 0.06],
    [5, 0.08, 0.25],
  ])(
    'for %i inks differs from the model by less than %f CIEDE2000 on average, %f at most',
    (count, mean, most) => {
      for (const paper of [WHITE_COATED, WHITE_UNCOATED, NEWSPRINT]) {
        const errors = errorsOf(printModel({ paper, inks: SHELF.slice(0, count) }));
        expect(errors.mean).toBeLessThan(mean);
        expect(errors.max).toBeLessThan(most);
      }
    },
  );

  it('stays under 0.2 at the greatest dot gain and under 0.6 on a harshly bent curve', () => {
    const inks = SHELF.slice(0, 3).map((ink) => ({ ...ink, gain: 0.5 }));
    expect(errorsOf(printModel({ paper: WHITE_UNCOATED, inks })).max).toBeLessThan(0.2);
    const curvePercent: Ink['curvePercent'] = [
      [5, 0],
      [40, 55],
      [90, 100],
    ];
    const bent = SHELF.slice(0, 3).map((ink) => ({ ...ink, curvePercent }));
    expect(errorsOf(printModel({ paper: WHITE_UNCOATED, inks: bent })).max).toBeLessThan(0.6);
  });

  it('holds whole steps of 1/65535 only', () => {
    const { data } = proofTable(printModel({ paper: WHITE_UNCOATED, inks: SHELF.slice(0, 2) }));
    for (const value of data) expect(value).toBe(Math.fround(Math.round(value * 65_535) / 65_535));
  });

  it('has the same bits in every engine', () => {
    const { data } = proofTable(
      printModel({ paper: WHITE_UNCOATED, inks: SHELF.slice(0, 3), passes: [1, 1, 2] }),
    );
    expect(fingerprint(data)).toBe('dc5ad29e');
  });

  it('refuses six inks and says what to use', () => {
    const inks = Array.from({ length: 6 }, (_, i) => inkOf(i, [50, 10, i]));
    expect(() => proofTable(printModel({ paper: WHITE_COATED, inks }))).toThrow('use the model itself');
  });
});
