import { describe, expect, it } from 'vitest';
import { complaintSchema } from '../../../src/graph/complaint.ts';
import { driftTowards, type SlackBorder, type SlackReport, shortfallOf } from '../../../src/press/slack.ts';
import { slackByPlate, slackFaults } from '../../../src/press/slack-faults.ts';
import { mendForAll, mendsOf } from '../../../src/press/slack-mends.ts';

/** 0.5 mm down the sheet, 0.2 mm across it. */
const DUPLICATOR = { alongMm: 0.5, acrossMm: 0.2, feed: 'down' } as const;

const border = (
  change: Partial<SlackBorder>,
  ...ways: [x: number, y: number, slackMm: number][]
): SlackBorder => ({
  plate: 'straw',
  between: ['r1', 'r2'],
  against: 'fill',
  shows: 'paper',
  lab: [95, 0, 0],
  hex: '#f0f0f0',
  distance: 40,
  ways: ways.map(([x, y, slackMm]) => ({ normal: [x, y], slackMm, placeMm: [3, 4] })),
  ...change,
});

const report = (...borders: SlackBorder[]): SlackReport => ({
  version: 1,
  reachMm: 2,
  pixelMm: 0.04,
  plates: [],
  borders,
});

describe('how far a plate may drift over a border', () => {
  it('is what it may along or across the feed, and between them on an ellipse', () => {
    expect(driftTowards([0, 1], DUPLICATOR)).toBe(0.5);
    expect(driftTowards([1, 0], DUPLICATOR)).toBe(0.2);
    expect(driftTowards([Math.SQRT1_2, Math.SQRT1_2], DUPLICATOR)).toBeCloseTo(Math.sqrt(0.145), 10);
  });

  it('swaps when the sheet is fed sideways, and does not depend on direction where both are alike', () => {
    expect(driftTowards([0, 1], { ...DUPLICATOR, feed: 'across' })).toBe(0.2);
    expect(driftTowards([0.6, 0.8], { alongMm: 0.3, acrossMm: 0.3, feed: 'down' })).toBeCloseTo(0.3, 10);
  });

  it('falls short of it where the border has less slack, told for the worst direction', () => {
    const found = shortfallOf(border({}, [1, 0, 0.15], [0, 1, 0.1]), DUPLICATOR)!;
    expect(found.way.normal).toEqual([0, 1]);
    expect(found.shortMm).toBeCloseTo(0.4, 10);
    expect(shortfallOf(border({}, [1, 0, 0.2], [0, 1, 0.5]), DUPLICATOR)).toBe(null);
  });
});

describe('faults of register slack', () => {
  it('are warnings where paper shows and notes for another overprint, the widest first, with place and width', () => {
    const faults = slackFaults(
      report(
        border({}, [0, 1, 0.45]),
        border({ plate: 'soot', against: 'line' }, [0, 1, 0]),
        border({ shows: 'overprint' }, [0, 1, 0]),
        border({ plate: 'brick' }, [0, 1, 0.6]),
      ),
      DUPLICATOR,
    );
    expect(faults.map(({ severity, measure }) => [severity, measure])).toEqual([
      ['warning', 0.5],
      ['warning', 0.05],
      ['note', 0.5],
    ]);
    for (const fault of faults) expect(complaintSchema.parse(fault).code).toBe('register-slack');
    expect(faults[0]).toMatchObject({
      placeMm: [3, 4],
      message: expect.stringMatching(/soot.*0 mm.*0\.5 mm/),
    });
  });
});

it('told plate by plate, faults are the worst border of each with how many there are', () => {
  const faults = slackByPlate(
    report(
      border({}, [0, 1, 0.45]),
      border({}, [0, 1, 0.1]),
      border({ plate: 'soot' }, [0, 1, 0.2]),
      border({ plate: 'soot', shows: 'overprint' }, [0, 1, 0]),
    ),
    DUPLICATOR,
  );
  expect(faults.map(({ plate, measure }) => [plate, measure])).toEqual([
    ['straw', 0.4],
    ['soot', 0.3],
  ]);
  expect(faults[0]!.message).toContain('at 2 borders');
  expect(faults[1]!.message).not.toContain('borders');
});

describe('what mends them', () => {
  it('is a trap as wide as the plate may drift there, in whole pixels, or a line heavier by what is short', () => {
    const [mend] = mendsOf(report(border({}, [0, 1, 0.29])), DUPLICATOR);
    expect([mend!.trapMm, mend!.heavierMm, mend!.insetMm]).toEqual([0.52, 0.24, null]);
  });

  it('beside the line is that fills reach farther under it', () => {
    const [mend] = mendsOf(report(border({ against: 'line' }, [1, 0, 0])), DUPLICATOR);
    expect([mend!.trapMm, mend!.heavierMm, mend!.insetMm]).toEqual([null, null, 0.2]);
  });

  it('is nothing where no node reaches so far', () => {
    const far = { alongMm: 3, acrossMm: 3, feed: 'down' } as const;
    const [mend] = mendsOf(report(border({}, [1, 0, 0])), far);
    expect([mend!.trapMm, mend!.heavierMm, mend!.insetMm]).toEqual([null, null, null]);
  });

  it('for all is the widest that bare paper asks for; overprints ask for nothing', () => {
    const mends = mendsOf(
      report(
        border({}, [1, 0, 0]),
        border({ shows: 'overprint' }, [0, 1, 0]),
        border({ against: 'line' }, [0, 1, 0]),
      ),
      DUPLICATOR,
    );
    expect(mendForAll(mends)).toEqual({ trapMm: 0.2, insetMm: 0.52 });
  });
});
