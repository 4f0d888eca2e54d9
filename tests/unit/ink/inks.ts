import fc from 'fast-check';
import type { Ink, Lab, Stock, Surface } from '../../../src/graph/inks.ts';
import { xyzOfLab } from '../../../src/ink/lab.ts';
import { swatchOf } from '../../../src/ink/swatch.ts';

export const WHITE_COATED: Stock = { lab: [95, 0, -2], surface: 'coated' };
export const WHITE_UNCOATED: Stock = { lab: [95, 0.5, -2], surface: 'uncoated' };
export const KRAFT: Stock = { lab: [66, 8, 22], surface: 'uncoated' };

/** An ink named by its number, translucent unless said otherwise. */
export const inkOf = (id: string | number, lab: Lab, more: Partial<Ink> = {}): Ink => ({
  id: `ink-${id}`,
  name: `Ink ${id}`,
  lab,
  opacity: 0.005,
  ...more,
});

/** Five invented inks, light and dark. */
export const SHELF: readonly Ink[] = [
  inkOf('pantile', [66, 40, 49]),
  inkOf('water', [45, -25, -7]),
  inkOf('damson', [31, 30, -17]),
  inkOf('straw', [78, 6, 52]),
  inkOf('privet', [48, -24, 30]),
];

export const anySurface: fc.Arbitrary<Surface> = fc.constantFrom('coated', 'uncoated', 'newsprint');

/** Any Lab that a plain ink can have. */
export const anyInkLab: fc.Arbitrary<Lab> = fc
  .tuple(fc.double({ min: 8, max: 90, noNaN: true }), signed(70), signed(70))
  .filter((lab) => !swatchOf(xyzOfLab(lab)).outsideModel);

export const anyTint: fc.Arbitrary<number> = fc.integer({ min: 0, max: 255 }).map((value) => value / 255);

function signed(most: number): fc.Arbitrary<number> {
  return fc.double({ min: -most, max: most, noNaN: true });
}
