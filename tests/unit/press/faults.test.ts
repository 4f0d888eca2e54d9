import { describe, expect, it } from 'vitest';
import type { Complaint } from '../../../src/graph/complaint.ts';
import { PRESS_FIGURES, PROCESSES, pressSchema } from '../../../src/graph/press.ts';
import {
  marginFaults,
  type PlateGrid,
  paleFault,
  solidFaults,
  totalInkFaults,
} from '../../../src/press/check/grid-faults.ts';
import { keyLineFaults } from '../../../src/press/check/line-faults.ts';
import { sliverFaults } from '../../../src/press/check/shape-faults.ts';
import { tintFaults } from '../../../src/press/check/tint-faults.ts';
import { isMeant, marked, meantOf } from '../../../src/press/meant.ts';
import { FIGURE_TITLES, PROFILES, pressOf, unitOf } from '../../../src/press/profiles.ts';

/** A plate of 1 mm cells, its tints in %. */
function grid(
  width: number,
  height: number,
  percent: (x: number, y: number) => number,
  plate = 'soot',
): PlateGrid {
  const data = Uint8Array.from({ length: width * height }, (_, i) =>
    Math.round(percent(i % width, Math.floor(i / width)) * 2.55),
  );
  return { plate, cellMm: 1, width, height, data };
}

const sheet = (width: number, height: number) => ({
  plan: { mm: [width, height] as const, trim: [0, 0, width, height] as const },
  feedEdge: 'top' as const,
  assumed: true,
});
const codes = (faults: readonly Complaint[]) => faults.map(({ code }) => code);
const stencil = pressOf('stencil');

describe('profiles', () => {
  it('of every process are presses whose figures tell their source', () => {
    for (const process of PROCESSES) {
      const press = pressOf(process);
      expect(pressSchema.parse(press)).toEqual(press);
      for (const { source } of Object.values(press.figures))
        expect(['published', 'common-practice']).toContain(source);
    }
  });

  it('name every figure and its unit', () => {
    for (const figure of PRESS_FIGURES) {
      expect(FIGURE_TITLES[figure].length).toBeGreaterThan(3);
      expect(unitOf(figure).length).toBeGreaterThan(0);
    }
  });

  it("start from these figures (printers' specifications, a studio handbook and a print lab's page: case 25)", () => {
    expect(PROFILES.stencil.marginMm).toEqual({ value: 6.35, source: 'published' });
    expect(PROFILES.stencil.mostSolidPercent).toEqual({ value: 85, source: 'published' });
    expect(PROFILES.stencil.stretchMostMm).toEqual({ value: 3, source: 'published' });
    expect(PROFILES['hand-screen'].leastTintPercent).toEqual({ value: 15, source: 'published' });
    expect(PROFILES['hand-screen'].mostTintPercent).toEqual({ value: 85, source: 'published' });
    expect(PROFILES.offset.trapMm).toEqual({ value: 0.08, source: 'published' });
    expect(PROFILES.offset.leastReverseMm).toEqual({ value: 0.17, source: 'published' });
  });
});

describe('a solid', () => {
  it('over an A3 on a duplicator is too large, lies at the lead edge and in the middle of the feed (case 14)', () => {
    const faults = solidFaults(
      grid(297, 420, () => 100),
      stencil,
      sheet(297, 420),
    );
    expect(codes(faults)).toEqual(['large-solid', 'solid-at-lead-edge', 'solid-in-feed-centre']);
    expect(faults[0]!.message).toMatch(/85 % or less/);
    expect(faults[0]!.measure).toBeCloseTo((297 * 420) / 100, 1);
  });

  it('of 85 % passes', () => {
    expect(
      solidFaults(
        grid(297, 420, () => 85),
        stencil,
        sheet(297, 420),
      ),
    ).toEqual([]);
  });

  it('that is small passes, wherever it lies off the edges', () => {
    const square = grid(200, 200, (x, y) => (x > 10 && x < 50 && y > 100 && y < 140 ? 100 : 0));
    expect(solidFaults(square, stencil, sheet(200, 200))).toEqual([]);
  });

  it('at the edge that enters last passes; at the one that enters first it does not', () => {
    const strip = grid(200, 200, (x, y) => (y < 10 && x < 60 ? 100 : 0));
    expect(codes(solidFaults(strip, stencil, sheet(200, 200)))).toEqual(['solid-at-lead-edge']);
    expect(solidFaults(strip, stencil, { ...sheet(200, 200), feedEdge: 'bottom' })).toEqual([]);
  });

  it('is measured patch by patch', () => {
    const two = grid(200, 200, (x, y) => ((x < 60 || x > 120) && y > 60 && y < 120 ? 100 : 0));
    const faults = solidFaults(
      two,
      { ...stencil, figures: { ...stencil.figures, centreStripMm: undefined } },
      sheet(200, 200),
    );
    expect(faults.map(({ measure }) => measure)).toEqual([35.4, 46.6]);
  });
});

it('ink in the margin of a sheet that is described is told', () => {
  const plate = grid(100, 100, (x) => (x < 50 ? 20 : 0));
  const narrow = {
    plan: { mm: [110, 110] as const, trim: [5, 5, 105, 105] as const },
    feedEdge: 'top' as const,
    assumed: false,
  };
  expect(codes(marginFaults(plate, stencil, narrow))).toEqual(['in-margin']);
  const wide = { ...narrow, plan: { mm: [120, 120] as const, trim: [10, 10, 110, 110] as const } };
  expect(marginFaults(plate, stencil, wide)).toEqual([]);
  expect(marginFaults(plate, stencil, { ...narrow, assumed: true })).toEqual([]);
});

it('all inks together are told where they are most', () => {
  const three = [70, 70, 70].map((percent, i) => grid(50, 40, (x) => (x === 30 ? percent + i : 50), `p${i}`));
  const [fault] = totalInkFaults(three, stencil);
  expect(fault).toMatchObject({ code: 'total-ink', measure: 213, severity: 'error' });
  expect(fault!.placeMm![0]).toBeCloseTo(30.5, 5);
  expect(totalInkFaults(three.slice(0, 2), stencil)).toEqual([]);
});

describe('tints', () => {
  const wedge = Array.from({ length: 21 }, (_, i) => ({
    id: `r${i}`,
    areaMm2: 10 + i,
    anchorMm: [i, 0] as const,
    recipe: { soot: i * 5 },
    fade: null,
  }));

  it('of a 5 % step wedge under 15 and over 85 fail on a hand screen, and no others (case 11)', () => {
    const failing = tintFaults(wedge, pressOf('hand-screen')).map(({ measure }) => measure);
    expect(failing.sort((a, b) => a! - b!)).toEqual([5, 10, 90, 95]);
  });

  it('fail once for each tint of a plate, at the largest region that has it', () => {
    const two = [wedge[1]!, { ...wedge[1]!, id: 'big', areaMm2: 99 }];
    const faults = tintFaults(two, pressOf('hand-screen'));
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ code: 'tint-vanishes', region: 'big', plate: 'soot' });
  });

  it('at either end of a fade count', () => {
    const fade = {
      shape: 'linear' as const,
      from: { soot: 40 },
      to: { soot: 8 },
      pathMm: [[0, 0] as [number, number], [1, 0] as [number, number]],
    };
    expect(
      tintFaults([{ ...wedge[8]!, fade }], pressOf('hand-screen')).map(({ measure }) => measure),
    ).toEqual([8]);
  });

  it('are not judged by a press that says nothing of them', () => {
    expect(tintFaults(wedge, pressOf('own'))).toEqual([]);
  });
});

it('a plate supplied as pale grey is told, one with nothing meant solid is not (case 24)', () => {
  expect(codes(paleFault('straw', Math.round(0.4 * 255), true))).toEqual(['plate-pale']);
  expect(paleFault('straw', Math.round(0.9 * 255), true)).toEqual([]);
  expect(paleFault('straw', Math.round(0.4 * 255), false)).toEqual([]);
  expect(paleFault('straw', 0, true)).toEqual([]);
});

describe('the key line', () => {
  it('in two plates must be twice as wide as they drift', () => {
    const line = (widthMm: number) => ({ widthMm, tintOf: { straw: 100, soot: 100 } });
    expect(codes(keyLineFaults(line(0.3), pressOf('offset'), null))).toEqual([]);
    expect(codes(keyLineFaults(line(0.3), stencil, null))).toEqual(['fine-line-in-plates']);
    expect(keyLineFaults({ widthMm: 0.3, tintOf: { straw: 0, soot: 100 } }, stencil, null)).toEqual([]);
  });

  it('at a tint must be two and a half dots wide', () => {
    const line = (widthMm: number) => ({ widthMm, tintOf: { soot: 60 } });
    expect(codes(keyLineFaults(line(0.7), pressOf('own'), 85))).toEqual(['line-screened']);
    expect(keyLineFaults(line(0.8), pressOf('own'), 85)).toEqual([]);
  });
});

it('slivers are told by the narrowest', () => {
  const region = (id: string, w: number, h: number) => ({
    id,
    areaMm2: w * h,
    anchorMm: [1, 2] as const,
    boxMm: [0, 0, w, h] as const,
  });
  const faults = sliverFaults([region('thin', 0.1, 20), region('thick', 2, 20)], stencil);
  expect(faults).toHaveLength(1);
  expect(faults[0]).toMatchObject({ region: 'thin', measure: 0.1 });
});

describe('a fault that is meant', () => {
  const fault: Complaint = {
    code: 'tint-vanishes',
    severity: 'error',
    message: 'x',
    plate: 'soot',
    region: 'r5',
    placeMm: [10, 10],
  };

  it('stays meant when its region moves, and no other does', () => {
    const known = [meantOf(fault)];
    expect(isMeant({ ...fault, placeMm: [90, 90] }, known)).toBe(true);
    expect(isMeant({ ...fault, region: 'r6' }, known)).toBe(false);
    expect(isMeant({ ...fault, plate: 'straw' }, known)).toBe(false);
  });

  it('without a region is found near its place', () => {
    const { region: _, ...placed } = fault;
    const known = [meantOf(placed)];
    expect(isMeant({ ...placed, placeMm: [13, 13] }, known)).toBe(true);
    expect(isMeant({ ...placed, placeMm: [16, 10] }, known)).toBe(false);
  });

  it('is marked in the list', () => {
    expect(marked([fault, { ...fault, plate: 'straw' }], [meantOf(fault)]).map(({ meant }) => meant)).toEqual(
      [true, undefined],
    );
  });
});
