import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '../../../src/graph/job.ts';
import { hashBytes } from '../../../src/graph/keys.ts';
import type { Press } from '../../../src/graph/press.ts';
import { meantOf } from '../../../src/press/meant.ts';
import { pressOf } from '../../../src/press/profiles.ts';
import { type Client, startEngine } from '../../../workers/client.ts';
import { linePng } from '../support/files.ts';
import { defaultJob, withBypassed, withRecipes, withSettings } from '../support/jobs.ts';
import { drawnPlane } from '../support/pictures.ts';

const PPI = 600;
const px = (mm: number) => Math.round((mm * PPI) / 25.4);
const WIDTHS_MM = [0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7];

/** Bars of line on the left, the same bars left out of a solid on the right. */
const LINES = linePng(
  drawnPlane(px(50), px(45), (x, y) => {
    const row = Math.floor(y / px(5));
    const width = px(WIDTHS_MM[row] ?? 0);
    const from = row * px(5) + px(2);
    const onBar = y >= from && y < from + width && x % px(25) > px(5) && x % px(25) < px(20);
    const inSolid = x >= px(25) + px(3) && x < px(25) + px(22) && y < px(42) && y > px(1);
    return (x < px(25) ? onBar : inSolid && !onBar) ? 255 : 0;
  }),
);

let client: Client;
beforeAll(async () => {
  client = await startEngine({ workers: 2 });
  await client.addAsset({ name: 'lines.png', bytes: LINES });
});
afterAll(() => client.close());

/** Line on the soot plate alone, whose solids are no regions. */
function barsJob(): Job {
  const job = withSettings(defaultJob({ asset: hashBytes(LINES), ppi: PPI }), {
    'closed-regions': { gapMm: 0, smallestMm2: 0 },
    'clean-line': { speckMm2: 0 },
    'key-line': { tintPercentOf: { straw: 0, brick: 0 } },
  });
  return withRecipes(withBypassed(job, 'plate-grain'), {}, { straw: 50 });
}

const shop = (leastPositiveMm: number, leastReverseMm: number): Press => ({
  ...pressOf('own'),
  figures: {
    leastPositiveMm: { value: leastPositiveMm, source: 'printer' },
    leastReverseMm: { value: leastReverseMm, source: 'printer' },
  },
});
const check = async (job: Job, press?: Press) =>
  (await client.run('pressCheck', { job, ...(press ? { press } : {}) })).report.complaints;

describe('lines and reverses of 0.05 to 0.7 mm (case 15)', () => {
  /** One printer's specification, 1 and 2 pt; offset's figures beside it. */
  it.each([
    [0.35, 0.7, 4, 7],
    [0.08, 0.17, 1, 2],
  ])(
    'that a press holding %d and %d mm cannot print are flagged and nothing else',
    async (line, gap, lines, gaps) => {
      const faults = (await check(barsJob(), shop(line, gap))).filter(({ plate }) => plate === 'soot');
      const said = Object.fromEntries(
        faults.map(({ code, message }) => [code, Number(/in (\d+) place/.exec(message)?.[1])]),
      );
      expect(said['line-thin']).toBe(lines);
      expect(said['reverse-thin']).toBe(gaps);
    },
  );

  it('are told with the width of the thinnest to a pixel, and a place on the longest', async () => {
    const faults = await check(barsJob(), shop(0.35, 0.7));
    const thin = faults.find(({ code, plate }) => code === 'line-thin' && plate === 'soot')!;
    expect(Math.abs(thin.measure! - 0.05)).toBeLessThanOrEqual(25.4 / PPI);
    expect(thin.placeMm![0] > 5 && thin.placeMm![0] < 20).toBe(true);
  });

  it('are not looked for by a press that says nothing of them', async () => {
    const codes = (await check(barsJob(), pressOf('own'))).map(({ code }) => code);
    expect(codes).not.toContain('line-thin');
    expect(codes).not.toContain('reverse-thin');
  });
});

describe('plates', () => {
  it('that are the same in every pixel are told', async () => {
    const job = withRecipes(barsJob(), {}, { straw: 50, brick: 50 });
    const faults = await check(job);
    expect(faults.filter(({ code }) => code === 'plates-identical').map(({ plate }) => plate)).toEqual([
      'brick',
    ]);
  });

  it('that are empty are told and break nothing', async () => {
    const codes = (await check(withRecipes(barsJob(), {}, {}), pressOf('stencil'))).map(({ code }) => code);
    expect(codes.filter((code) => code === 'plate-empty')).toHaveLength(2);
  });

  it('that print a pale ink as pale grey are told (case 24)', async () => {
    const job = withRecipes(barsJob(), {}, { straw: 100 });
    expect((await check(job)).map(({ code }) => code)).not.toContain('plate-pale');
    const limited = withSettings(job, { 'fill-plates': { mostPercentOf: { straw: 40 } } });
    expect((await check(limited)).find(({ code }) => code === 'plate-pale')).toMatchObject({
      plate: 'straw',
      measure: 40,
    });
  });
});

it('a fault that is meant is told as meant', async () => {
  const job = barsJob();
  const fault = (await check(job, shop(0.35, 0.7))).find(({ code }) => code === 'line-thin')!;
  const again = await check({ ...job, meant: [meantOf(fault)] }, shop(0.35, 0.7));
  expect(again.find(({ code }) => code === 'line-thin')!.meant).toBe(true);
  expect(again.find(({ code }) => code === 'reverse-thin')!.meant).toBeUndefined();
});

it('the press of the job is the one that counts where no other is asked for', async () => {
  const job = { ...barsJob(), press: shop(0.35, 0.7) };
  expect((await check(job)).map(({ code }) => code)).toContain('line-thin');
  expect((await check(job, pressOf('own'))).map(({ code }) => code)).not.toContain('line-thin');
});
