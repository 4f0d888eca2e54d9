import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { clearGone, openCases, reassign } from '../../../src/graph/carry-over.ts';
import type { Job } from '../../../src/graph/job.ts';
import { assignIds } from '../../../src/graph/register.ts';
import { cancelFlag } from '../../../workers/engine/cancel.ts';
import { type Redrawn, redraw } from '../../../workers/tasks/redraw.ts';
import { Bench } from '../support/engine.ts';
import { defaultJob, reopened, type Settings, withSettings } from '../support/jobs.ts';

let bench: Bench;
beforeAll(() => {
  bench = new Bench();
});
afterAll(() => bench.close());

/** A bed of rows and columns of cells on 80 x 60 mm, some lines of it elsewhere or left out. */
function bed(more = '', transform = '', cells = CELLS): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="80mm" height="60mm" viewBox="0 0 80 60"><g transform="${transform}" fill="none" stroke="#000" stroke-width="0.6">${cells.join('')}${more}</g></svg>`;
}
const CELLS = Array.from({ length: 12 }, (_, i) => {
  const [x, y] = [6 + (i % 4) * 18, 5 + Math.floor(i / 4) * 18];
  return `<path d="M${x} ${y}h${12 + (i % 3)}v${11 + (i % 2)}h-${12 + (i % 3)}z"/>`;
});

const asset = (svg: string) => bench.asset('bed.svg', new TextEncoder().encode(svg));
const PPI = 254;

/** A job whose regions are remembered and each tinted otherwise. */
async function jobOf(svg: string, settings: Settings = {}): Promise<Job> {
  const plain = withSettings(defaultJob({ asset: asset(svg), ppi: PPI }), {
    'closed-regions': { gapMm: 0, ...settings },
  });
  const { table, ids } = await bench.value(plain, 'closed-regions.regions', 'regions');
  const recipes = Object.fromEntries(ids.map((id, i) => [id, { straw: 1 + i }]));
  const { register } = assignIds(table, plain.register);
  return { ...plain, register, colourways: [{ ...plain.colourways[0]!, recipes }] };
}

const context = () => ({ engine: bench.engine, flag: cancelFlag(), onProgress: () => {} });
const redrawn = (job: Job, svg: string): Promise<Redrawn> =>
  redraw({ job, drawing: { hash: asset(svg), file: 'bed 2.svg' }, ppi: PPI }, context());
/** Straw at places of the sheet, mm, as the job prints there. */
async function strawAt(job: Job, ...places: [number, number][]): Promise<(number | undefined)[]> {
  const { labels, ids } = await bench.value(job, 'closed-regions.regions', 'regions');
  return places.map(([x, y]) => {
    const label = labels.data[Math.floor(y * 10) * labels.width + Math.floor(x * 10)]!;
    return job.colourways[0]!.recipes[ids[label - 1]!]?.straw;
  });
}
const states = ({ carry }: Redrawn) => carry.regions.map(({ state }) => state);
const MIDDLES = CELLS.map((_, i): [number, number] => [12 + (i % 4) * 18, 10 + Math.floor(i / 4) * 18]);

describe('a redraw', () => {
  it('of the same lines keeps everything', async () => {
    const job = await jobOf(bed());
    const again = await redrawn(job, bed('<!-- again -->'));
    expect(new Set(states(again))).toEqual(new Set(['kept']));
    expect(again.carry.transform).toEqual({ scale: 1, shiftMm: [0, 0], turnDeg: 0 });
    expect(await strawAt(again.job, ...MIDDLES)).toEqual(await strawAt(job, ...MIDDLES));
    expect(reopened(again.job)).toEqual(again.job);
  });

  it('moved, turned and larger finds how, and carries every recipe', async () => {
    const job = await jobOf(bed());
    const again = await redrawn(job, bed('', 'translate(40 30) rotate(2) scale(1.03) translate(-38.5 -31)'));
    const { scale, turnDeg, shiftMm } = again.carry.transform;
    expect(scale).toBeCloseTo(1.03, 2);
    expect(turnDeg).toBeCloseTo(2, 0);
    expect(Math.hypot(shiftMm[0] - 1.58, shiftMm[1] + 0.97)).toBeLessThan(0.4);
    const turned = MIDDLES.map(([x, y]): [number, number] => {
      const [c, s] = [Math.cos((2 * Math.PI) / 180), Math.sin((2 * Math.PI) / 180)];
      const [dx, dy] = [1.03 * (x - 38.5), 1.03 * (y - 31)];
      return [40 + c * dx - s * dy, 30 + s * dx + c * dy];
    });
    expect(await strawAt(again.job, ...turned)).toEqual(await strawAt(job, ...MIDDLES));
  });

  it('that parts a region gives both pieces its recipe', async () => {
    const job = await jobOf(bed());
    const again = await redrawn(job, bed('<path d="M10.5 4v14"/>'));
    const [before] = await strawAt(job, [8, 10]);
    expect(await strawAt(again.job, [8, 10], [15, 10])).toEqual([before, before]);
    expect(states(again).filter((state) => state === 'split')).toHaveLength(2);
    const ids = again.carry.regions.filter(({ state }) => state === 'split').map((each) => each.new);
    expect(new Set(ids).size).toBe(2);
  });

  it('that makes one region of two keeps the larger recipe, and the other can be had again', async () => {
    const pair = '<path d="M6 5h14v12h-14z"/><path d="M12 5v12"/>';
    const job = await jobOf(bed(pair, '', CELLS.slice(1)));
    const [, larger] = await strawAt(job, [8, 10], [16, 10]);
    const [smaller] = await strawAt(job, [8, 10]);
    const again = await redrawn(job, bed('<path d="M6 5h14v12h-14z"/>', '', CELLS.slice(1)));
    expect(await strawAt(again.job, [8, 10])).toEqual([larger]);
    const merged = again.carry.regions.filter(({ state }) => state === 'merged');
    expect(merged).toHaveLength(2);
    const lost = merged.find((each) => each.old !== each.new)!;
    expect(again.job.colourways[0]!.recipes[lost.old!]).toEqual({ straw: smaller });
  });

  it('tells of what is new and what is gone, and loses no recipe until it is cleared', async () => {
    const job = await jobOf(bed());
    const other = [...CELLS.slice(0, 11), '<path d="M66 56h9v3h-9z"/>'];
    const again = await redrawn(job, bed('', '', other));
    const gone = again.carry.regions.filter(({ state }) => state === 'gone');
    expect(gone).toHaveLength(1);
    expect(states(again).filter((state) => state === 'new')).toHaveLength(1);
    expect(again.job.redraw!.gone.map(({ id }) => id)).toEqual([gone[0]!.old]);
    expect(again.job.colourways[0]!.recipes).toHaveProperty(gone[0]!.old!);
    const cleared = clearGone(again.job);
    expect(cleared.colourways[0]!.recipes).not.toHaveProperty(gone[0]!.old!);
    expect(openCases(cleared.redraw!).map(({ state }) => state)).not.toContain('gone');
  });

  it('lets a new region take the recipe of one that is gone', async () => {
    const job = await jobOf(bed());
    const again = await redrawn(job, bed('', '', [...CELLS.slice(0, 11), '<path d="M66 56h9v3h-9z"/>']));
    const fresh = again.carry.regions.find(({ state }) => state === 'new')!.new!;
    const old = again.carry.regions.find(({ state }) => state === 'gone')!.old!;
    const given = reassign(again.job, fresh, old);
    expect(given.colourways[0]!.recipes[fresh]).toEqual(job.colourways[0]!.recipes[old]);
  });

  it('names each old and each new region', async () => {
    const job = await jobOf(bed());
    const { carry, job: next } = await redrawn(job, bed('<path d="M10.5 4v14"/>', '', CELLS.slice(0, 10)));
    const olds = new Set(carry.regions.flatMap((each) => each.old ?? []));
    const news = new Set(carry.regions.flatMap((each) => each.new ?? []));
    expect([...olds].sort()).toEqual(job.register.regions.map(({ id }) => id).sort());
    expect([...news].sort()).toEqual(next.register.regions.map(({ id }) => id).sort());
  });

  it('takes hand edits, groups and pins along', async () => {
    const edits = [
      {
        id: 'c',
        does: 'cut',
        pathMm: [
          [10.5, 3],
          [10.5, 20],
        ],
      },
    ];
    const job = await jobOf(bed(), { edits } as Settings);
    const [first] = job.register.regions;
    const held = { ...job, pins: [first!.id], groups: [{ id: 'g', name: 'Beans', regions: [first!.id] }] };
    const again = await redrawn(held, bed('', 'translate(2 1)'));
    const [edit] = again.job.graph.nodes.find(({ kind }) => kind === 'closed-regions')!.settings.edits as {
      pathMm: number[][];
    }[];
    expect(edit!.pathMm[0]![0]).toBeCloseTo(12.5, 0);
    expect(edit!.pathMm[0]![1]).toBeCloseTo(4, 0);
    expect(again.job.pins).toEqual([first!.id]);
    expect(new Set(states(again))).toEqual(new Set(['kept']));
  });

  it('put back restores ids, places and recipes exactly', async () => {
    const edits = [
      {
        id: 'c',
        does: 'cut',
        pathMm: [
          [10.5, 3],
          [10.5, 20],
        ],
      },
    ];
    const job = await jobOf(bed(), { edits } as Settings);
    const away = await redrawn(job, bed('<path d="M30 4v14"/>', 'translate(1 2) rotate(1)'));
    const back = await redrawn(away.job, bed());
    const settings = (of: Job) => of.graph.nodes.find(({ kind }) => kind === 'closed-regions')!.settings;
    expect(settings(back.job)).toEqual(settings(job));
    expect(back.job.register.regions).toEqual(job.register.regions);
    for (const [id, recipe] of Object.entries(job.colourways[0]!.recipes))
      expect(back.job.colourways[0]!.recipes[id]).toEqual(recipe);
    expect(await strawAt(back.job, ...MIDDLES)).toEqual(await strawAt(job, ...MIDDLES));
  });

  it('with another picture carries nothing, says so and loses nothing', async () => {
    const job = await jobOf(bed());
    const rings = Array.from({ length: 9 }, (_, i) => `<circle cx="40" cy="30" r="${3 * i + 2}"/>`);
    const { carry, job: next } = await redrawn(job, bed('', '', rings));
    expect(carry.complaints.map(({ code }) => code)).toContain('other-picture');
    expect(new Set(carry.regions.map(({ state }) => state))).toEqual(new Set(['new', 'gone']));
    for (const [id, recipe] of Object.entries(job.colourways[0]!.recipes))
      expect(next.colourways[0]!.recipes[id]).toEqual(recipe);
    expect(next.register.regions.some(({ id }) => id in job.colourways[0]!.recipes)).toBe(false);
  });

  it('at another resolution carries over all the same', async () => {
    const job = await jobOf(bed());
    const again = await redraw(
      { job, drawing: { hash: asset(bed('<!-- finer -->')), file: 'b.svg' }, ppi: 381 },
      context(),
    );
    expect(new Set(states(again))).toEqual(new Set(['kept']));
  });

  it('without lines is refused and nothing changes', async () => {
    const job = await jobOf(bed());
    await expect(redrawn(job, bed('', '', []))).rejects.toThrow(/no line/);
  });

  it('is the same for any number of workers', async () => {
    const one = new Bench(1);
    const job = await jobOf(bed());
    const svg = bed('<path d="M10.5 4v14"/>', 'translate(1 1)');
    for (const each of [bed(), svg]) one.asset('bed.svg', new TextEncoder().encode(each));
    const input = { job, drawing: { hash: asset(svg), file: 'b.svg' }, ppi: PPI };
    const alone = await redraw(input, { engine: one.engine, flag: cancelFlag(), onProgress: () => {} });
    await one.close();
    expect(alone).toEqual(await redraw(input, context()));
  });
});
