import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../src/graph/inks.ts';
import { plateSvg } from '../../../src/ink/form/form-svg.ts';
import { formLayout, LADDER } from '../../../src/ink/form/layout.ts';
import { strokesOf, textPath, textWidth } from '../../../src/ink/form/letters.ts';
import { pageToPicture } from '../../../src/ink/form/page-place.ts';
import { findingsOf, toneValue } from '../../../src/ink/form/read-form.ts';

const A4 = { widthMm: 210, heightMm: 297 };
const PLATES = ['straw', 'brick', 'soot'].map((id) => ({ id, ink: id }));
const layout = formLayout(PLATES, A4);

describe('letters in outlines', () => {
  it('stay in their cells', () => {
    for (const letter of 'ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789%.,/+-:') {
      const runs = strokesOf(letter);
      expect(runs.length, letter).toBeGreaterThan(0);
      for (const [x, y] of runs.flat()) {
        expect(x).toBeLessThanOrEqual(4);
        expect(y).toBeLessThanOrEqual(6);
      }
    }
  });

  it('differ from one another', () => {
    const paths = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789'].map((letter) => textPath(letter, 6, [0, 0]));
    expect(new Set(paths).size).toBe(paths.length - 0);
  });

  it('leave a space for what they cannot write', () => {
    expect(textPath('\u8336', 2, [0, 0])).toBe('');
    expect(textWidth('AB', 6)).toBeCloseTo(9.6, 9);
  });
});

describe('the press test form', () => {
  it('holds paper, all overprints and tints in steps of 5 %, as patches of 10 mm', () => {
    expect(layout.patches).toHaveLength(1 + 7 + 3 * 20);
    for (const { width, height } of layout.patches) expect([width, height]).toEqual([10, 10]);
    const tints = layout.patches.filter(({ id }) => id.startsWith('brick ')).map((patch) => patch.tints[1]);
    expect(tints.slice(-20)).toEqual(Array.from({ length: 20 }, (_, i) => (i + 1) / 20));
  });

  it('keeps its patches apart and on the page', () => {
    for (const [i, one] of layout.patches.entries()) {
      expect(one.x).toBeGreaterThanOrEqual(0);
      expect(one.x + one.width).toBeLessThanOrEqual(A4.widthMm);
      for (const other of layout.patches.slice(i + 1)) {
        const apart =
          one.x + one.width <= other.x ||
          other.x + other.width <= one.x ||
          one.y + one.height <= other.y ||
          other.y + other.height <= one.y;
        expect(apart, `${one.id} and ${other.id}`).toBe(true);
      }
    }
  });

  it('holds a line of every width, printed and left out, on every plate', () => {
    for (const plate of [0, 1, 2])
      for (const tint of [0, 1])
        for (const width of LADDER)
          expect(
            layout.bars.some((bar) => bar.plate === plate && bar.tint === tint && bar.width === width),
            `${plate} ${tint} ${width}`,
          ).toBe(true);
  });

  it('shows a drift in tenths: marks of plate and ruler meet at ten times the drift', () => {
    const across = (plate: number) =>
      layout.bars
        .filter((bar) => bar.plate === plate && bar.width === 0.1 && bar.height < 4)
        .map(({ x }) => x);
    const own = across(1);
    const drift = 0.3;
    const best = own
      .map((x, i) => ({ i: i - 5, off: Math.min(...across(0).map((ruler) => Math.abs(ruler - x - drift))) }))
      .sort((a, b) => a.off - b.off)[0]!;
    expect(best.i).toBe(3);
    expect(best.off).toBeLessThan(1e-9);
  });

  it('needs room, and says how much', () => {
    expect(() => formLayout(PLATES, { widthMm: 210, heightMm: 100 })).toThrow(/needs a page of 210 x \d+ mm/);
    expect(() => formLayout(PLATES, { widthMm: 60, heightMm: 900 })).toThrow(/needs a page/);
  });

  it('puts no more than its own ink on a plate', () => {
    const svg = plateSvg(layout, 2);
    expect(svg).toContain('width="210mm"');
    expect(svg.match(/<rect/g)!.length).toBe(
      1 +
        layout.patches.filter(({ tints }) => tints[2]! > 0).length +
        layout.bars.filter(({ plate }) => plate === 2).length,
    );
  });

  it('has room for twelve plates on a large page, in pairs', () => {
    const many = Array.from({ length: 12 }, (_, i) => ({ id: `p${i + 1}`, ink: `p${i + 1}` }));
    const large = formLayout(many, { widthMm: 420, heightMm: 594 });
    expect(large.patches.filter(({ tints }) => tints.filter((tint) => tint === 1).length === 2)).toHaveLength(
      66,
    );
  });
});

describe('places of the form in a picture', () => {
  it('follow a picture taken aslant', () => {
    const from = [
      [0, 0],
      [200, 0],
      [200, 300],
      [0, 300],
    ] as const;
    const to = [
      [0.1, 0.1],
      [0.9, 0.15],
      [0.8, 0.9],
      [0.15, 0.85],
    ] as const;
    const place = pageToPicture(from, to);
    from.forEach((corner, i) => {
      const [x, y] = place(corner);
      expect(x).toBeCloseTo(to[i]![0], 9);
      expect(y).toBeCloseTo(to[i]![1], 9);
    });
    // A projective map takes the crossing of the diagonals to the crossing of the diagonals.
    const [x, y] = place([100, 150]);
    const cross = (a: readonly number[], b: readonly number[], p: readonly number[]) =>
      (b[0]! - a[0]!) * (p[1]! - a[1]!) - (b[1]! - a[1]!) * (p[0]! - a[0]!);
    expect(cross(to[0], to[2], [x, y])).toBeCloseTo(0, 9);
    expect(cross(to[1], to[3], [x, y])).toBeCloseTo(0, 9);
  });

  it('are refused where three corners are one', () => {
    const from = [
      [0, 0],
      [200, 0],
      [200, 300],
      [0, 300],
    ] as const;
    expect(() =>
      pageToPicture(from, [
        [0, 0],
        [0, 0],
        [0, 0],
        [0, 0],
      ]),
    ).toThrow(/four crosses/);
  });
});

const PAPER: Lab = [95, 0, 0];
const SOLID: Lab = [40, 0, 0];

describe('what a printed form says', () => {
  it('is Murray-Davies tone: 0 on paper, 1 on the solid', () => {
    expect(toneValue(PAPER, SOLID, PAPER)).toBe(0);
    expect(toneValue(PAPER, SOLID, SOLID)).toBe(1);
    expect(toneValue(PAPER, PAPER, PAPER)).toBeNull();
  });

  it('is solids and overprints by how they were read', () => {
    const readings = { paper: PAPER, straw: [85, 0, 60], 'straw + brick': [48, 50, 35] } as Record<
      string,
      Lab
    >;
    expect(findingsOf(layout, readings, 'scan').measured).toEqual([
      { inks: ['straw'], lab: [85, 0, 60], how: 'scan' },
      { inks: ['straw', 'brick'], lab: [48, 50, 35], how: 'scan' },
    ]);
  });

  it('is a film-to-print curve that rises', () => {
    // Y of grey: tone 0.3 at 20 %, 0.6 at 50 %.
    const yOf = (l: number) => ((l + 16) / 116) ** 3;
    const lOf = (y: number) => 116 * Math.cbrt(y) - 16;
    const mix = (tone: number): Lab => [lOf(yOf(95) + tone * (yOf(40) - yOf(95))), 0, 0];
    const readings = {
      paper: PAPER,
      soot: SOLID,
      'soot 20': mix(0.3),
      'soot 50': mix(0.6),
      'soot 80': mix(0.88),
    };
    const { curves, doubts } = findingsOf(layout, readings, 'instrument');
    expect(curves).toEqual({
      soot: [
        [20, 30],
        [50, 60],
        [80, 88],
      ],
    });
    expect(doubts).toEqual([]);
  });

  it('leaves out, and tells, a tint that reads paler than the one before it', () => {
    const readings = {
      paper: PAPER,
      soot: SOLID,
      'soot 20': [70, 0, 0],
      'soot 40': [85, 0, 0],
      'soot 60': [60, 0, 0],
      'soot 80': [50, 0, 0],
    } as Record<string, Lab>;
    const { curves, doubts } = findingsOf(layout, readings, 'instrument');
    expect(curves.soot!.map(([film]) => film)).toEqual([20, 60, 80]);
    expect(doubts.join()).toMatch(/soot 40 % reads .* read that patch again/);
  });

  it('makes no curve of an ink that looks like its paper', () => {
    const readings = {
      paper: PAPER,
      straw: [95, 0, 0.5],
      'straw 20': PAPER,
      'straw 50': PAPER,
      'straw 80': PAPER,
    } as Record<string, Lab>;
    const { curves, doubts } = findingsOf(layout, readings, 'instrument');
    expect(curves).toEqual({});
    expect(doubts).toEqual(['straw: its solid is too much like the paper to read tints of it']);
  });
});
