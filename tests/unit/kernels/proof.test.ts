import { describe, expect, it } from 'vitest';
import type { Ink } from '../../../src/graph/inks.ts';
import { printModel } from '../../../src/ink/model.ts';
import type { PrintInput } from '../../../src/ink/model-input.ts';
import { proofTable } from '../../../src/ink/proof-table.ts';
import { encodeSrgb, linearOfXyz } from '../../../src/ink/srgb.ts';
import type { PaintArgs } from '../../../workers/kernels/paint-proof.ts';
import { proof } from '../../../workers/kernels/proof.ts';
import { proofMany } from '../../../workers/kernels/proof-many.ts';
import { flatPlane, planeOf, rowsOf, sharedBytes } from '../support/pictures.ts';
import { randomOf } from '../support/random.ts';

/** One pixel for each recipe, its numbers the coverages 0..255 of the plates. */
function paintArgs(recipes: readonly number[][], texture = flatPlane(recipes.length, 1, 128)): PaintArgs {
  return {
    plates: recipes[0]!.map((_, k) => planeOf([recipes.map((recipe) => recipe[k]!)])),
    texture,
    depth: 0,
    toScreen: [1, 0, 0, 0, 1, 0, 0, 0, 1],
    encoding: Uint8Array.from({ length: 256 }, (_, v) => v),
    out: sharedBytes(recipes.length * 3),
  };
}

const pixelsOf = ({ out }: PaintArgs) => rowsOf(out, 3);

describe('the proof', () => {
  const oneInk = { size: 2, table: Float32Array.of(1, 1, 1, 0, 0.5, 1) };

  it('shows the square of what the table holds at its nodes', () => {
    const args = { ...paintArgs([[0], [255]]), ...oneInk };
    proof(args, 0, 1);
    expect(pixelsOf(args)).toEqual([
      [255, 255, 255],
      [0, 64, 255],
    ]);
  });

  it('blends the roots between nodes', () => {
    const args = { ...paintArgs([[51]]), ...oneInk };
    proof(args, 0, 1);
    expect(pixelsOf(args)[0]).toEqual([Math.round(255 * 0.8 ** 2), Math.round(255 * 0.9 ** 2), 255]);
  });

  it('takes the first plate as the fastest axis of its table', () => {
    const table = Float32Array.from([1, 0.8, 0.6, 0.4].flatMap((root) => [root, root, root]));
    const args = {
      ...paintArgs([
        [0, 0],
        [255, 0],
        [0, 255],
        [255, 255],
      ]),
      size: 2,
      table,
    };
    proof(args, 0, 1);
    expect(pixelsOf(args).map(([red]) => red)).toEqual([255, 163, 92, 41]);
  });

  it('turns XYZ into the colours of the screen, and holds them within the screen', () => {
    const toScreen = [2, 0, 0, 0, 0, 1, 0, -1, 0];
    const args = { ...paintArgs([[0], [255]]), ...oneInk, toScreen };
    proof(args, 0, 1);
    expect(pixelsOf(args)).toEqual([
      [255, 255, 0],
      [0, 255, 0],
    ]);
  });

  it('lets the texture of the sheet add or take light, by its depth', () => {
    const texture = planeOf([[128, 192, 64, 128]]);
    const args = { ...paintArgs([[255], [255], [255], [255]], texture), ...oneInk, depth: 0.5 };
    proof(args, 0, 1);
    expect(pixelsOf(args).map(([, green]) => green)).toEqual([64, 80, 48, 64]);
  });
});

const LABS = [
  [85, 2, 60],
  [50, 50, 30],
  [40, -30, -20],
  [60, 10, -40],
  [70, -20, 20],
  [20, 1, 1],
] as const;

function printOf(count: number): PrintInput {
  const inks = LABS.slice(0, count).map(
    (lab, i): Ink => ({ id: `i${i}`, name: `Ink ${i}`, lab: [...lab], opacity: 0.02 }),
  );
  return { paper: { lab: [95, 0.5, -2], surface: 'uncoated' }, inks };
}

const TO_SCREEN = [0, 1, 2].flatMap((row) =>
  [linearOfXyz([1, 0, 0]), linearOfXyz([0, 1, 0]), linearOfXyz([0, 0, 1])].map((column) => column[row]!),
);
const ENCODING = Uint8Array.from({ length: 4096 }, (_, i) => Math.round(255 * encodeSrgb(i / 4095)));

function screenArgs(recipes: readonly number[][]): PaintArgs {
  return { ...paintArgs(recipes), toScreen: TO_SCREEN, encoding: ENCODING };
}

/** What the colour model itself says a recipe looks like on screen, 0..255 each, not rounded. */
function modelled(print: PrintInput, recipe: readonly number[]): number[] {
  const root = printModel(print).rootXyzOf(recipe.map((coverage) => coverage / 255));
  const [x, y, z] = root.map((value) => value * value);
  return linearOfXyz([x!, y!, z!]).map((light) => 255 * encodeSrgb(Math.min(1, Math.max(0, light))));
}

/** Paper, solids and all overprints: the corners of every table. */
function corners(count: number): number[][] {
  return Array.from({ length: 1 << count }, (_, set) =>
    Array.from({ length: count }, (_, k) => ((set >> k) & 1 ? 255 : 0)),
  );
}

function painted(print: PrintInput, recipes: readonly number[][]): number[][] {
  const args = screenArgs(recipes);
  const { size, data } = proofTable(printModel(print));
  proof({ ...args, size, table: data }, 0, 1);
  return pixelsOf(args);
}

function paintedMany(print: PrintInput, recipes: readonly number[][]): number[][] {
  const args = screenArgs(recipes);
  proofMany({ ...args, print }, 0, 1);
  return pixelsOf(args);
}

/** The largest difference of any byte. */
function off(found: number[][], wanted: number[][]): number {
  return Math.max(...found.flatMap((pixel, i) => pixel.map((byte, c) => Math.abs(byte - wanted[i]![c]!))));
}

describe('the proof of real inks', () => {
  it.each([1, 2, 3, 4, 5])(
    'of %d is the colour model at paper, solids and overprints, to a byte',
    (count) => {
      const print = printOf(count);
      const wanted = corners(count).map((recipe) => modelled(print, recipe));
      expect(off(painted(print, corners(count)), wanted)).toBeLessThan(1);
    },
  );

  it('of one is the colour model at every tint, to a byte', () => {
    const print = printOf(1);
    const tints = Array.from({ length: 256 }, (_, v) => [v]);
    const model = printModel(print);
    const wanted = tints.map(([v]) => {
      const [x, y, z] = model.rootXyzOf([v! / 255]).map((value) => value * value);
      return linearOfXyz([x!, y!, z!]).map((light) => 255 * encodeSrgb(Math.min(1, Math.max(0, light))));
    });
    expect(off(painted(print, tints), wanted)).toBeLessThan(1);
  });

  it('of six is the colour model at paper, solids and overprints, to a byte', () => {
    const print = printOf(6);
    const some = corners(6).filter((_, i) => i % 5 === 0);
    const wanted = some.map((recipe) => modelled(print, recipe));
    expect(off(paintedMany(print, some), wanted)).toBeLessThan(1);
  });

  it('is the same whether its nodes come from a table or are worked out when needed', () => {
    const print = printOf(5);
    const random = randomOf(3);
    const recipes = Array.from({ length: 300 }, () =>
      Array.from({ length: 5 }, () => (random() < 0.3 ? 0 : Math.floor(random() * 256))),
    );
    expect(off(paintedMany(print, recipes), painted(print, recipes))).toBeLessThanOrEqual(1);
  });
});
