import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '../../../src/graph/job.ts';
import type { SlackBorder, Tolerance } from '../../../src/press/slack.ts';
import { slackFaults } from '../../../src/press/slack-faults.ts';
import { mendForAll, mendsOf } from '../../../src/press/slack-mends.ts';
import { withTrap, withTrapWidth } from '../../../src/press/with-trap.ts';
import { cancelFlag } from '../../../workers/engine/cancel.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { registerSlack } from '../../../workers/tasks/register-slack.ts';
import { Bench } from '../support/engine.ts';
import { defaultJob, type Settings, withRecipes, withSettings } from '../support/jobs.ts';
import { drawnPlane } from '../support/pictures.ts';

const PPI = 600;
const PX = 25.4 / PPI;
const [WIDTH, HEIGHT] = [360, 240];

let bench: Bench;
beforeAll(() => {
  bench = new Bench();
});
afterAll(() => bench.close());

/** A box parted in the middle by a line of so many px. */
function halves(linePx: number, keyLine: Settings): Job {
  const line = drawnPlane(WIDTH, HEIGHT, (x, y) => {
    const off = Math.max(Math.abs(x - 179.5) - 150, Math.abs(y - 119.5) - 90);
    return Math.abs(off) < linePx / 2 || (off < 0 && Math.abs(x - 179.5) < linePx / 2) ? 255 : 0;
  });
  const job = defaultJob({ asset: bench.drawing(line), ppi: PPI });
  return withSettings(job, { 'key-line': keyLine });
}

async function tinted(job: Job, left: Record<string, number>, right: Record<string, number>): Promise<Job> {
  const { table, ids } = await bench.value(job, 'closed-regions.regions', 'regions');
  const recipes = Object.fromEntries(
    table.flatMap(({ touchesFrame, anchorMm: [x] }, i) =>
      touchesFrame ? [] : [[ids[i]!, x < (WIDTH * PX) / 2 ? left : right] as const],
    ),
  );
  return withRecipes(job, recipes);
}

const slackOf = (job: Job) =>
  registerSlack({ job }, { engine: bench.engine, flag: cancelFlag(), onProgress: () => {} });

const leastOf = (
  borders: readonly SlackBorder[],
  plate: string,
  against: SlackBorder['against'],
  shows: SlackBorder['shows'],
) => {
  const ways = borders.flatMap((border) =>
    border.plate === plate && border.against === against && border.shows === shows ? border.ways : [],
  );
  return ways.length === 0 ? null : Math.min(...ways.map(({ slackMm }) => slackMm));
};

/** Longest run of bare paper along the middle row when one plate is shifted to the right by so many px. */
function gapPx(planes: readonly Plane[], plate: number, px: number): number {
  const row = (planes[0]!.height >> 1) * planes[0]!.width;
  let longest = 0;
  let run = 0;
  for (let x = 40; x < WIDTH - 40; x++) {
    const bare = planes.every((plane, k) => plane.data[row + x - (k === plate ? px : 0)]! < 128);
    run = bare ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return longest;
}

/** The line in soot alone, the fills knocked out under it but for an inset. */
const SOOT_LINE = (insetMm: number): Settings => ({
  tintPercentOf: { straw: 0, brick: 0, soot: 100 },
  fills: 'knocked-out',
  insetMm,
});

describe('a key line plate that shifts by 0.5 mm (case 7)', () => {
  it('leaves a paper gap of 0.15 mm where fills reach 0.35 mm under it, told to a pixel', async () => {
    const job = await tinted(halves(48, SOOT_LINE(0.35)), { straw: 100 }, { brick: 100 });
    const { report } = await slackOf(job);
    const slackMm = leastOf(report.borders, 'soot', 'line', 'paper')!;
    expect(Math.abs(0.5 - slackMm - 0.15)).toBeLessThanOrEqual(PX);
    const { plates } = await bench.value(job, 'key-line.plates', 'plates');
    const gap = gapPx(
      plates.map(({ coverage }) => coverage),
      2,
      Math.round(0.5 / PX),
    );
    expect(Math.abs(gap * PX - (0.5 - slackMm))).toBeLessThanOrEqual(PX);
    expect(slackFaults(report, { alongMm: 0.5, acrossMm: 0.5, feed: 'down' })).toContainEqual(
      expect.objectContaining({ code: 'register-slack', severity: 'warning' }),
    );
  });

  it('leaves none where they reach 0.5 mm under it', async () => {
    const job = await tinted(halves(48, SOOT_LINE(0.5)), { straw: 100 }, { brick: 100 });
    const { report } = await slackOf(job);
    expect(leastOf(report.borders, 'soot', 'line', 'paper')!).toBeGreaterThan(0.5 - PX);
    const { plates } = await bench.value(job, 'key-line.plates', 'plates');
    const planes = plates.map(({ coverage }) => coverage);
    expect(gapPx(planes, 2, Math.floor(0.5 / PX))).toBe(0);
  });
});

/** No line prints: fills meet under nothing. */
const NO_LINE: Settings = { tintPercent: 0, fills: 'kept' };

describe('fills that meet without a line', () => {
  const paper = (borders: readonly SlackBorder[], plate: string) => leastOf(borders, plate, 'fill', 'paper');

  it('have no slack at all untrapped, and show paper and another overprint, kept apart', async () => {
    const { report } = await slackOf(await tinted(halves(2, NO_LINE), { straw: 100 }, { soot: 100 }));
    expect(paper(report.borders, 'straw')).toBe(0);
    expect(leastOf(report.borders, 'soot', 'fill', 'paper')).toBe(0);
    const { paper: least } = report.plates.find(({ id }) => id === 'straw')!;
    expect(least!.placeMm[0]).toBeCloseTo(180 * PX, 0);
  });

  it('have as much slack as their trap is wide, to a pixel', async () => {
    const job = await tinted(halves(2, NO_LINE), { straw: 100 }, { soot: 100 });
    const { report } = await slackOf(withTrapWidth(withTrap(job), 0.35));
    expect(Math.abs(paper(report.borders, 'straw')! - 0.35)).toBeLessThanOrEqual(PX);
  });

  it('show another overprint alone where they share an ink', async () => {
    const job = await tinted(halves(2, NO_LINE), { straw: 100, brick: 100 }, { straw: 100, soot: 60 });
    const { report } = await slackOf(job);
    expect(paper(report.borders, 'brick')).toBe(null);
    expect(leastOf(report.borders, 'brick', 'fill', 'overprint')).toBe(0);
  });

  it('that differ in the tint of one plate alone have nothing to slip', async () => {
    const job = await tinted(halves(2, NO_LINE), { straw: 100 }, { straw: 30 });
    expect((await slackOf(job)).report.borders.filter(({ against }) => against === 'fill')).toEqual([]);
  });

  it('hold behind a line that covers them, as far as it reaches to each side', async () => {
    const kept = { tintPercentOf: { straw: 0, brick: 0, soot: 100 }, fills: 'kept' };
    const job = await tinted(halves(24, kept), { straw: 100 }, { brick: 100 });
    const { report } = await slackOf(job);
    expect(Math.abs(paper(report.borders, 'straw')! - 12 * PX)).toBeLessThanOrEqual(PX);
  });
});

describe('mending what fails', () => {
  const hand: Tolerance = { alongMm: 0.5, acrossMm: 0.25, feed: 'down' };

  it('asks for the least trap that the direction of the border needs, and it then holds', async () => {
    const job = await tinted(halves(2, NO_LINE), { straw: 100 }, { soot: 100 });
    const before = (await slackOf(job)).report;
    const upright = mendsOf(before, hand).find(
      ({ fault }) => fault.border.between[0] !== fault.border.between[1],
    )!;
    expect(upright.trapMm!).toBeGreaterThanOrEqual(0.25);
    expect(upright.trapMm!).toBeLessThan(0.25 + PX);
    const { trapMm } = mendForAll(mendsOf(before, hand));
    const after = (await slackOf(withTrapWidth(job, trapMm!))).report;
    expect(slackFaults(after, hand).filter(({ severity }) => severity === 'warning')).toEqual([]);
    const less = (await slackOf(withTrapWidth(job, trapMm! - 2 * PX))).report;
    expect(slackFaults(less, hand).filter(({ severity }) => severity === 'warning')).not.toEqual([]);
  });

  it('turns with the feed', async () => {
    const job = await tinted(halves(2, NO_LINE), { straw: 100 }, { soot: 100 });
    const { report } = await slackOf(job);
    const widthOf = (feed: Tolerance['feed']) => mendForAll(mendsOf(report, { ...hand, feed })).trapMm!;
    expect(widthOf('across')).toBeGreaterThan(widthOf('down') + 0.2);
  });

  it('offers a heavier line, or fills that reach farther under it', async () => {
    const kept = { tintPercentOf: { straw: 0, brick: 0, soot: 100 }, fills: 'kept' };
    const job = await tinted(halves(6, kept), { straw: 100 }, { brick: 100 });
    const { report } = await slackOf(job);
    const heavierMm = Math.max(...mendsOf(report, hand).map((mend) => mend.heavierMm ?? 0));
    const heavier = withSettings(job, { 'clean-line': { heavierMm } });
    const paperFaults = async (changed: Job) =>
      slackFaults((await slackOf(changed)).report, hand).filter(({ severity }) => severity === 'warning');
    expect(await paperFaults(job)).not.toEqual([]);
    expect(await paperFaults(heavier)).toEqual([]);
    const knocked = await tinted(halves(48, SOOT_LINE(0.1)), { straw: 100 }, { brick: 100 });
    const { insetMm } = mendForAll(mendsOf((await slackOf(knocked)).report, hand));
    expect(await paperFaults(withSettings(knocked, { 'key-line': { insetMm: insetMm! } }))).toEqual([]);
  });
});
