import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ink, Lab, Measurement, Stock } from '../../../src/graph/inks.ts';
import { differenceOf } from '../../../src/ink/difference.ts';
import { resolveInkLab } from '../../../src/ink/ink-lab.ts';
import { labOfXyz, xyzOfLab } from '../../../src/ink/lab.ts';
import { printModel } from '../../../src/ink/model.ts';
import type { PrintInput } from '../../../src/ink/model-input.ts';
import { swatchOf } from '../../../src/ink/swatch.ts';
import { anyInkLab, anySurface, anyTint, inkOf, KRAFT, SHELF, WHITE_COATED, WHITE_UNCOATED } from './inks.ts';

const PALE_OPAQUE = inkOf('limewash', [94, 0, -1], { opacity: 0.85 });

const expectLab = (lab: Lab, wanted: Lab, within: number): void => {
  lab.forEach((value, axis) => {
    expect(Math.abs(value - wanted[axis]!)).toBeLessThan(within);
  });
};

const lightnessOf = (root: readonly number[]): number => root[1]! * root[1]!;

describe('a print', () => {
  it('without ink is its paper to 1e-6, whatever the number of inks', () => {
    for (const paper of [WHITE_COATED, WHITE_UNCOATED, KRAFT]) {
      for (let count = 1; count <= 5; count++) {
        const { labOf } = printModel({ paper, inks: SHELF.slice(0, count) });
        expectLab(labOf(new Array(count).fill(0)), paper.lab, 1e-6);
      }
    }
  });

  it('of one solid is the Lab of its ink, for any ink, opacity, gain and surface', () => {
    const anyInk = fc.tuple(
      anyInkLab,
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 0.5, noNaN: true }),
    );
    fc.assert(
      fc.property(anyInk, anyInk, anySurface, ([lab, opacity, gain], [other], surface) => {
        const paper: Stock = { lab: [95, 0, -2], surface };
        const model = printModel({ paper, inks: [inkOf(1, other), inkOf(2, lab, { opacity, gain })] });
        expect(differenceOf(model.labOf([0, 1]), lab)).toBeLessThan(0.001);
        expectLab(model.primaries[2]!, lab, 1e-5);
      }),
      { numRuns: 40 },
    );
  });

  it('says the same as root XYZ and as Lab', () => {
    const { rootXyzOf, labOf } = printModel({ paper: WHITE_UNCOATED, inks: SHELF.slice(0, 3) });
    const [x, y, z] = rootXyzOf([0.2, 0.7, 0.4]);
    expectLab(labOfXyz([x * x, y * y, z * z]), labOf([0.2, 0.7, 0.4]), 1e-9);
  });

  it('grows darker by dot gain: uncoated more than coated, newsprint most, an own gain before either', () => {
    const ink = SHELF[1]!;
    const half = (paper: Stock, more: Partial<Ink> = {}): number =>
      printModel({ paper, inks: [{ ...ink, ...more }] }).labOf([0.5])[0];
    const on = (surface: Stock['surface']): Stock => ({ lab: [95, 0, -2], surface });
    expect(half(on('uncoated'))).toBeLessThan(half(on('coated')));
    expect(half(on('newsprint'))).toBeLessThan(half(on('uncoated')));
    expect(half(on('newsprint'), { gain: 0 })).toBeCloseTo(half(on('coated')), 1);
  });

  it('reads what its tone gain says: a 50 % tint of 15 % gain reads 65 %, once, on any surface', () => {
    for (const surface of ['coated', 'uncoated', 'newsprint'] as const) {
      for (const gain of [0, 15, 30]) {
        const inks = [{ ...SHELF[1]!, toneGainPercent: gain }];
        const { rootXyzOf } = printModel({ paper: { lab: [95, 0, -2], surface }, inks });
        const x = (tint: number): number => rootXyzOf([tint])[0] ** 2;
        expect((x(0) - x(0.5)) / (x(0) - x(1))).toBeCloseTo(0.5 + gain / 100, 9);
      }
    }
  });

  it('follows a typed film-to-print curve in place of dot gain: 50 reads 50', () => {
    const inks = [SHELF[1]!];
    const straight = printModel({ paper: WHITE_UNCOATED, inks: [{ ...inks[0]!, curvePercent: [[50, 50]] }] });
    const y = (tint: number): number => lightnessOf(straight.rootXyzOf([tint]));
    const x = (tint: number): number => straight.rootXyzOf([tint])[0] ** 2;
    expect((x(0) - x(0.5)) / (x(0) - x(1))).toBeCloseTo(0.5, 9);
    expect(y(0.5)).toBeGreaterThan(lightnessOf(printModel({ paper: WHITE_UNCOATED, inks }).rootXyzOf([0.5])));
  });
});

describe('translucent inks', () => {
  const paper = WHITE_COATED;
  const paperSpectrum = swatchOf(xyzOfLab(paper.lab)).reflectance;
  /** Darker than the paper in every band; a pale ink may be lighter than it in some. */
  const darker = anyInkLab.filter((lab) =>
    swatchOf(xyzOfLab(lab)).reflectance.every((r, i) => r < paperSpectrum[i]!),
  );
  const threeInks = fc
    .array(darker, { minLength: 3, maxLength: 3 })
    .map((labs) => labs.map((lab, i) => inkOf(i, lab, { opacity: 0 })));
  const threeTints = fc.tuple(anyTint, anyTint, anyTint);

  it('never make a print lighter by more of them, when each is taken up fully', () => {
    fc.assert(
      fc.property(threeInks, threeTints, fc.integer({ min: 0, max: 2 }), (inks, tints, ink) => {
        const { rootXyzOf } = printModel({ paper, inks, takeUp: 1 });
        const more = tints.map((tint, i) => (i === ink ? Math.min(1, tint + 0.1) : tint));
        rootXyzOf(more).forEach((root, axis) => {
          expect(root).toBeLessThanOrEqual(rootXyzOf(tints)[axis]! + 1e-12);
        });
      }),
      { numRuns: 40 },
    );
  });

  it('print alike in any order when perfectly clear and taken up fully', () => {
    fc.assert(
      fc.property(threeInks, threeTints, (inks, [a, b, c]) => {
        const forth = printModel({ paper, inks, takeUp: 1 }).rootXyzOf([a, b, c]);
        const back = printModel({ paper, inks: inks.toReversed(), takeUp: 1 }).rootXyzOf([c, b, a]);
        forth.forEach((root, axis) => {
          expect(root).toBeCloseTo(back[axis]!, 10);
        });
      }),
      { numRuns: 20 },
    );
  });

  it('do depend on order when they are taken up on each other less than fully', () => {
    const [one, , , other] = SHELF as [Ink, Ink, Ink, Ink];
    const forth = printModel({ paper, inks: [one, other], takeUp: 0.7 }).primaries[3]!;
    const back = printModel({ paper, inks: [other, one], takeUp: 0.7 }).primaries[3]!;
    expect(differenceOf(forth, back)).toBeGreaterThan(0.5);
  });

  it('of one pass are taken up wet on wet, so the overprint is lighter than from passes apart', () => {
    const inks = SHELF.slice(0, 2);
    const wet = printModel({ paper, inks, passes: [1, 1] }).primaries[3]!;
    const dry = printModel({ paper, inks, passes: [1, 2] }).primaries[3]!;
    const stated = printModel({ paper, inks, passes: [1, 2], takeUp: 0.74 }).primaries[3]!;
    expect(wet[0]).toBeGreaterThan(dry[0] + 1);
    expect(stated).toEqual(wet);
    expect(printModel({ paper, inks }).primaries[3]).toEqual(dry);
  });

  it('are taken up as stated for the two passes, or for one pass on itself', () => {
    const inks = SHELF.slice(0, 2);
    const overprint = (input: Partial<PrintInput>): Lab =>
      printModel({ paper, inks, passes: [2, 5], ...input }).primaries[3]!;
    const stated = (below: number, above: number) => ({ takeUps: [{ below, above, takeUp: 0.6 }] });
    expect(overprint(stated(2, 5))).toEqual(overprint({ takeUp: 0.6 }));
    expect(overprint(stated(5, 2))).toEqual(overprint({}));
    expect(overprint({ ...stated(2, 2), passes: [2, 2] })).toEqual(overprint({ takeUp: 0.6 }));
    expect(overprint({ ...stated(2, 5), passes: [2, 2] })).toEqual(overprint({ passes: [2, 2] }));
  });

  it('are taken up by the ink directly beneath: 1 under 2 under 3', () => {
    const inks = SHELF.slice(0, 3);
    const takeUps = [{ below: 1, above: 3, takeUp: 0.5 }];
    const some = printModel({ paper, inks, passes: [1, 2, 3], takeUps }).primaries;
    const plain = printModel({ paper, inks, passes: [1, 2, 3] }).primaries;
    expect(some[0b111]).toEqual(plain[0b111]);
    expect(some[0b101]![0]).toBeGreaterThan(plain[0b101]![0] + 0.5);
  });

  it('are taken up wet on wet where the ink beneath is of their pass, a dry one further down or not', () => {
    const inks = SHELF.slice(0, 3);
    const wet = printModel({ paper, inks, passes: [1, 2, 2] }).primaries;
    const dry = printModel({ paper, inks, passes: [1, 2, 3] }).primaries;
    expect(wet[0b101]).toEqual(dry[0b101]);
    expect(wet[0b111]![0]).toBeGreaterThan(dry[0b111]![0] + 0.5);
  });
});

describe('opaque inks', () => {
  it('hide what is beneath at opacity 1', () => {
    const cover = inkOf('cover', [60, 10, 30], { opacity: 1 });
    const { primaries } = printModel({ paper: WHITE_COATED, inks: [SHELF[2]!, cover], takeUp: 0.5 });
    expectLab(primaries[3]!, [60, 10, 30], 1e-6);
  });

  it('light on a dark stock are lighter than the stock, and darker than on white', () => {
    const { primaries } = printModel({ paper: KRAFT, inks: [PALE_OPAQUE], reference: WHITE_UNCOATED });
    expect(primaries[1]![0]).toBeGreaterThan(KRAFT.lab[0] + 10);
    expect(primaries[1]![0]).toBeLessThan(94);
  });

  it('light over a dark ink lighten it; the same ink made clear does not', () => {
    const over = (opacity: number): number =>
      printModel({ paper: WHITE_COATED, inks: [SHELF[2]!, { ...PALE_OPAQUE, opacity }] }).primaries[3]![0];
    expect(over(0.85)).toBeGreaterThan(70);
    expect(over(0)).toBeLessThan(32);
  });
});

describe('another stock than the inks were given on', () => {
  it('shows through a clear ink', () => {
    const ink = SHELF[3]!;
    const onKraft = printModel({ paper: KRAFT, inks: [ink], reference: WHITE_UNCOATED }).primaries[1]!;
    expect(onKraft[0]).toBeLessThan(KRAFT.lab[0]);
    expect(onKraft[0]).toBeLessThan(resolveInkLab(ink)[0] - 15);
  });

  it('with a duller surface veils a dark solid', () => {
    const dark = inkOf('dark', [20, 1, 1]);
    const paper: Stock = { ...WHITE_COATED, surface: 'uncoated' };
    const [, solid] = printModel({ paper, inks: [dark], reference: WHITE_COATED }).primaries;
    expect(solid![0]).toBeGreaterThan(22);
  });

  it('that is the same stock changes nothing', () => {
    const plain = printModel({ paper: KRAFT, inks: SHELF.slice(0, 3) });
    const named = printModel({ paper: KRAFT, inks: SHELF.slice(0, 3), reference: KRAFT });
    expect(named.primaries).toEqual(plain.primaries);
  });
});

describe('many inks', () => {
  const twelve = Array.from({ length: 12 }, (_, i) => inkOf(i, [40 + 4 * i, 30 - 5 * i, 5 * i - 20]));

  it('up to twelve print paper, solids and mixes, asked twice alike', () => {
    const { count, labOf, rootXyzOf } = printModel({ paper: WHITE_COATED, inks: twelve });
    const only = (ink: number): number[] => twelve.map((_, i) => (i === ink ? 1 : 0));
    expect(count).toBe(12);
    expectLab(labOf(new Array(12).fill(0)), WHITE_COATED.lab, 1e-6);
    twelve.forEach((ink, i) => {
      expect(differenceOf(labOf(only(i)), resolveInkLab(ink))).toBeLessThan(0.001);
    });
    const mix = twelve.map((_, i) => (i % 3 === 0 ? 0.4 : 0));
    expect(rootXyzOf(mix)).toEqual(rootXyzOf(mix));
  });

  it('of which one stays unused print as without it, of which one hardly shows nearly so: six as five', () => {
    const inks = twelve.slice(0, 6);
    const six = printModel({ paper: WHITE_UNCOATED, inks });
    const five = printModel({ paper: WHITE_UNCOATED, inks: inks.slice(0, 5) });
    const tints = [0.3, 1, 0.15, 0.8, 0.55];
    expectLab(six.labOf([...tints, 0]), five.labOf(tints), 1e-9);
    expectLab(six.labOf([...tints, 1e-12]), five.labOf(tints), 1e-8);
    expect(six.primaries).toHaveLength(64);
    expectLab(six.primaries[0b10110]!, five.primaries[0b10110]!, 1e-9);
  });
});

describe('measured colours', () => {
  const inks = SHELF.slice(0, 3);
  const ids = inks.map((ink) => ink.id);
  const pair = { inks: [ids[1]!, ids[0]!], lab: [30, 5, 8] as Lab };

  it('take the place of the prediction, in whatever order the inks are named', () => {
    const { primaries, isMeasured } = printModel({ paper: WHITE_COATED, inks, measured: [pair] });
    expectLab(primaries[3]!, pair.lab, 1e-6);
    expect([0, 1, 3, 5, 7].map(isMeasured)).toEqual([true, false, true, false, false]);
  });

  it('of a pair draw the triple their way, and equal to the prediction leave it alone', () => {
    const plain = printModel({ paper: WHITE_COATED, inks });
    const agreed = { inks: pair.inks, lab: plain.primaries[3]! };
    const lighter = { inks: pair.inks, lab: [plain.primaries[3]![0] + 8, 0, 0] as Lab };
    const triple = (measured: typeof pair): Lab =>
      printModel({ paper: WHITE_COATED, inks, measured: [measured] }).primaries[7]!;
    expectLab(triple(agreed), plain.primaries[7]!, 1e-6);
    expect(triple(lighter)[0]).toBeGreaterThan(plain.primaries[7]![0] + 0.5);
  });

  it('of a solid take the place of the colour typed for its ink, overprints included', () => {
    const measured = [{ inks: [ids[0]!], lab: [50, 20, 20] as Lab }];
    const read = printModel({ paper: WHITE_COATED, inks, measured });
    const typed = printModel({
      paper: WHITE_COATED,
      inks: [{ ...inks[0]!, lab: [50, 20, 20] }, ...inks.slice(1)],
    });
    read.primaries.forEach((lab, set) => {
      expectLab(lab, typed.primaries[set]!, 1e-6);
    });
  });

  it('of a solid laid twice hold for two plates of one ink', () => {
    const twice = [inks[0]!, inks[0]!];
    const measured = [{ inks: [ids[0]!, ids[0]!], lab: [48, 45, 45] as Lab }];
    expectLab(printModel({ paper: WHITE_COATED, inks: twice, measured }).primaries[3]!, [48, 45, 45], 1e-6);
  });
});

describe('several readings of one set', () => {
  const inks = SHELF.slice(0, 2);
  const ids = inks.map(({ id }) => id);
  const read = (lab: Lab, more: Partial<Measurement> = {}): Measurement => ({ inks: ids, lab, ...more });
  const overprint = (...measured: Measurement[]): Lab =>
    printModel({ paper: WHITE_COATED, inks, measured }).primaries[3]!;
  const predicted = overprint();

  it('let the most trustworthy win, in whatever order they stand', () => {
    const eye = read([38, 0, 0], { how: 'eye', accepted: true });
    const photo = read([36, 0, 0], { how: 'photo', accepted: true });
    const scan = read([34, 0, 0], { how: 'scan' });
    const instrument = read([32, 0, 0]);
    expectLab(overprint(eye, photo, scan, instrument), [32, 0, 0], 1e-6);
    expectLab(overprint(scan, eye, photo), [34, 0, 0], 1e-6);
    expectLab(overprint(eye, photo), [36, 0, 0], 1e-6);
    expectLab(overprint(eye), [38, 0, 0], 1e-6);
  });

  it('of one kind count with their mean', () => {
    expectLab(overprint(read([30, 2, -4]), read([34, 6, 0])), [32, 4, -2], 1e-6);
  });

  it.each(['photo', 'eye'] as const)('change nothing as long as a %s is not accepted', (how) => {
    for (const accepted of [undefined, false]) {
      const hint = read([32, 0, 0], { how, accepted });
      const { primaries, isMeasured, notes } = printModel({ paper: WHITE_COATED, inks, measured: [hint] });
      expect(primaries[3]).toEqual(predicted);
      expect(isMeasured(3)).toBe(false);
      const note = notes.find(({ code }) => code === 'unaccepted-reading')!;
      expect(note.inks).toEqual(ids);
      expect(note.distance).toBeCloseTo(differenceOf([32, 0, 0], predicted), 9);
      expect(note.message).toContain(`${note.distance!.toFixed(1)} CIEDE2000 from what is predicted`);
    }
  });

  it('say nothing of an unaccepted photo where an instrument read the same', () => {
    const measured = [read([32, 0, 0]), read([38, 0, 0], { how: 'photo' })];
    expect(printModel({ paper: WHITE_COATED, inks, measured }).notes).toEqual([]);
  });
});

describe('notes', () => {
  it('name a fluorescent ink once and say to measure it', () => {
    const fluorescent = inkOf('glow', [80, 90, 60]);
    const { notes } = printModel({ paper: WHITE_COATED, inks: [fluorescent, fluorescent] });
    expect(notes.filter(({ ink }) => ink === 'ink-glow')).toHaveLength(1);
    expect(notes[0]).toMatchObject({
      code: 'outside-model',
      message: expect.stringContaining('measure this one'),
    });
  });

  it('say that overprints are predictions until all are measured', () => {
    const inks = SHELF.slice(0, 2);
    const codes = (measured: { inks: string[]; lab: Lab }[]): string[] =>
      printModel({ paper: WHITE_COATED, inks, measured }).notes.map(({ code }) => code);
    expect(codes([])).toEqual(['predicted-overprints']);
    expect(codes([{ inks: inks.map(({ id }) => id), lab: [40, 10, 10] }])).toEqual([]);
  });

  const codesOf = (input: Partial<PrintInput>): string[] =>
    printModel({ paper: WHITE_COATED, inks: SHELF.slice(0, 2), ...input }).notes.map(({ code }) => code);
  const pair = SHELF.slice(0, 2).map(({ id }) => id);

  it('doubt an overprint of clear inks that is lighter than its darkest ink, and say by how much', () => {
    const measured = [{ inks: pair, lab: [58, 5, 5] as Lab }];
    expect(printModel({ paper: WHITE_COATED, inks: SHELF.slice(0, 2), measured }).notes).toMatchObject([
      {
        code: 'unlikely-reading',
        inks: pair,
        message: expect.stringContaining('is 13 L lighter than its darkest'),
      },
    ]);
    expect(codesOf({ measured: [{ inks: pair, lab: [48, 5, 5] }] })).toEqual([]);
  });

  it('do not doubt it where the upper ink hides', () => {
    const inks = [SHELF[0]!, { ...SHELF[1]!, opacity: 0.8 }];
    expect(codesOf({ inks, measured: [{ inks: pair, lab: [58, 5, 5] }] })).toEqual([]);
  });

  it('doubt a solid that reads like its paper, and a reading of more plates than there are', () => {
    expect(codesOf({ measured: [{ inks: [pair[0]!], lab: [95, 0.2, -2] }] })).toContain('unlikely-reading');
    expect(codesOf({ measured: [{ inks: [pair[0]!, pair[0]!], lab: [50, 20, 20] }] })).toContain(
      'unlikely-reading',
    );
  });

  it('want a light ink on dark stock measured, until it is', () => {
    const inks = [PALE_OPAQUE];
    const print = { paper: KRAFT, reference: WHITE_UNCOATED, inks };
    expect(printModel(print).notes).toMatchObject([
      {
        code: 'lighter-than-stock',
        ink: 'ink-limewash',
        message: expect.stringContaining('measure this one'),
      },
    ]);
    expect(codesOf({ ...print, measured: [{ inks: ['ink-limewash'], lab: [85, 2, 5] }] })).toEqual([]);
    expect(codesOf({ inks })).toEqual([]);
  });

  it('are none for one plain ink', () => {
    expect(printModel({ paper: WHITE_COATED, inks: [SHELF[0]!] }).notes).toEqual([]);
  });
});

describe('what cannot be modelled is refused with what to change', () => {
  const inks = SHELF.slice(0, 2);
  const refusal = (more: object) => () => printModel({ paper: WHITE_COATED, inks, ...more });

  it('in the input', () => {
    expect(refusal({ inks: [] })).toThrow('a print has 1 to 12 inks, not 0');
    expect(refusal({ passes: [1] })).toThrow('give one pass for each of 2 inks, not 1');
    expect(refusal({ takeUp: 95 })).toThrow('take-up is a share from 0 to 1, not 95');
    const bent = (points: [number, number][]) => ({ inks: [{ ...inks[0]!, curvePercent: points }] });
    expect(refusal(bent([[50, 160]]))).toThrow('curve of ink-pantile: point 1 leaves 0 to 100 %');
    expect(
      refusal(
        bent([
          [50, 60],
          [50, 70],
        ]),
      ),
    ).toThrow('film values must rise; point 2 does not');
    expect(refusal({ inks: [{ ...inks[0]!, opacity: 1.2 }] })).toThrow('opacity of ink-pantile is a share');
    expect(refusal({ inks: [inks[0]!, { ...inks[1]!, id: 'ink-pantile' }] })).toThrow(
      'two inks are called ink-pantile and differ; give one another id',
    );
    const twice = { below: 1, above: 2, takeUp: 0.8 };
    expect(refusal({ takeUps: [{ ...twice, takeUp: 80 }] })).toThrow(
      'take-up of pass 2 on pass 1 is a share from 0 to 1, not 80',
    );
    expect(refusal({ takeUps: [twice, twice] })).toThrow(
      'take-up of pass 2 on pass 1 is given twice; keep one',
    );
    expect(refusal({ measured: [{ inks: ['tin'], lab: [50, 0, 0] }] })).toThrow(
      'there is no ink tin in this print',
    );
  });

  it('in a recipe', () => {
    const { labOf } = printModel({ paper: WHITE_COATED, inks });
    expect(() => labOf([0.5])).toThrow('give one tint for each of 2 inks, not 1');
    expect(() => labOf([0.5, 70])).toThrow('tint 2 is 70: give a share from 0 to 1');
    expect(() => labOf([Number.NaN, 0])).toThrow('tint 1 is NaN');
  });

  it('in an ink without colour', () => {
    expect(() => resolveInkLab({ id: 'x', name: 'X', opacity: 0 })).toThrow(
      'ink x has no colour: give it lab or hex',
    );
  });
});

describe('the colour of an ink', () => {
  it('may be given as a screen colour', () => {
    expectLab(resolveInkLab({ id: 'x', name: 'X', opacity: 0, hex: '#808080' }), [53.585, 0, 0], 0.001);
  });
});
