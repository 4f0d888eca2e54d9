import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '../../../src/graph/job.ts';
import { surveySchema } from '../../../src/graph/survey.ts';
import { cancelFlag } from '../../../workers/engine/cancel.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { lineReport } from '../../../workers/tasks/line-report.ts';
import { specks } from '../../../workers/tasks/specks.ts';
import { Bench } from '../support/engine.ts';
import { defaultJob, type Settings, withBypassed, withSettings } from '../support/jobs.ts';
import { drawnPlane, flatPlane } from '../support/pictures.ts';

/** 10 px to a millimetre. */
const PPI = 254;

let bench: Bench;
beforeAll(() => {
  bench = new Bench();
});
afterAll(() => bench.close());

const jobOf = (line: Plane, settings: Settings = {}): Job =>
  withSettings(defaultJob({ asset: bench.drawing(line), ppi: PPI }), { 'clean-line': settings });
const context = (nodes: string[] = []) => ({
  engine: bench.engine,
  flag: cancelFlag(),
  onProgress: ({ node }: { node: string }) => {
    nodes.push(node);
  },
});
const report = async (job: Job) => surveySchema.parse(await lineReport({ job }, context()));

/** Bars of 3, 6 and 10 px, as long as each other, a solid of 50 px, and a ring with an opening of 4 px. */
const DRAWING = drawnPlane(300, 200, (x, y) => {
  const bar = (at: number, width: number) => y >= 10 && y < 110 && x >= at && x < at + width;
  const solid = x >= 220 && x < 270 && y >= 20 && y < 70;
  const ring = Math.abs(Math.hypot(x - 120, y - 155) - 30) < 2.5 && !(x > 130 && Math.abs(y - 155) < 2);
  return bar(20, 3) || bar(40, 6) || bar(60, 10) || solid || ring ? 255 : 0;
});
/** The drawing with dust of 2 x 1 and 1 x 1 px. */
const DUSTY = drawnPlane(300, 200, (x, y) => {
  const dust = (y === 5 && (x === 100 || x === 101)) || (y === 190 && x === 250);
  return dust ? 255 : DRAWING.data[y * 300 + x]!;
});

describe('the report of a line', () => {
  it('tells how wide its lines are, solids apart', async () => {
    const { line } = await report(jobOf(DRAWING));
    expect(line.widthsMm!.thinnest).toBeCloseTo(0.3, 1);
    expect(line.widthsMm!.low).toBeCloseTo(0.3, 1);
    expect(line.widthsMm!.high).toBeCloseTo(1, 1);
  });

  it.each([
    [1, 0.1],
    [2, 0.2],
    [3, 0.3],
    [4, 0.4],
    [7, 0.7],
    [12, 1.2],
  ])('measures a bar of %d px as %d mm', async (px, mm) => {
    const bar = drawnPlane(120, 80, (x, y) => (x >= 50 && x < 50 + px && y > 5 && y < 75 ? 255 : 0));
    const { line } = await report(jobOf(bar, { speckMm2: 0 }));
    expect(Math.abs(line.widthsMm!.middle - mm)).toBeLessThan(0.012);
  });

  it('has no widths where there is no line', async () => {
    const { line } = await report(withBypassed(jobOf(flatPlane(60, 50)), 'closed-regions'));
    expect(line).toEqual({ coveragePercent: 0, widthsMm: null });
  });

  it('tells specks, light, threshold and turn', async () => {
    const { cleaning } = await report(jobOf(DUSTY));
    expect(cleaning).toEqual({
      light: { evened: false, spreadPercent: 0 },
      threshold: { how: 'half', levelPercent: 49.804 },
      turnedDeg: 0,
      specks: {
        count: 2,
        areaMm2: 0.03,
        largest: [
          { boxMm: [10, 0.5, 10.2, 0.6], placeMm: [10.1, 0.55], areaMm2: 0.02 },
          { boxMm: [25, 19, 25.1, 19.1], placeMm: [25.05, 19.05], areaMm2: 0.01 },
        ],
      },
      pinholes: { count: 0, areaMm2: 0 },
    });
  });

  it('tells the openings that Closed regions closed, and those it left', async () => {
    const closed = await report(jobOf(DRAWING));
    expect(closed.openings!.closed).toHaveLength(1);
    expect(closed.openings!.closed[0]!.placeMm[0]).toBeCloseTo(15, 0);
    const open = withSettings(jobOf(DRAWING), { 'closed-regions': { gapMm: 0.1 } });
    const { openings } = await report(open);
    expect(openings!.closed).toEqual([]);
    expect(openings!.open[0]).toEqual({ widthMm: 0.3, placeMm: [15.05, 15.55] });
  });

  it('has nothing on openings without Closed regions, and nothing on cleaning without Clean line', async () => {
    const found = await report(withBypassed(jobOf(DUSTY), 'clean-line', 'closed-regions'));
    expect([found.openings, found.cleaning]).toEqual([null, null]);
  });
});

describe('the specks that go', () => {
  it('are the same, and cost nothing once the line is clean', async () => {
    const job = jobOf(DUSTY, { softness: 90 });
    await bench.value(job, 'clean-line.drawing', 'drawing');
    const ran: string[] = [];
    const gone = await specks({ job }, context(ran));
    expect(gone.largest.map(({ areaMm2 }) => areaMm2)).toEqual([0.02, 0.01]);
    expect(ran).toEqual([]);
  });

  it('are none without Clean line', async () => {
    expect(await specks({ job: withBypassed(jobOf(DUSTY), 'clean-line') }, context())).toEqual({
      count: 0,
      areaMm2: 0,
      largest: [],
    });
  });
});
