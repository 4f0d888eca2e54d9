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

describe('what lies over regions follows a redraw', () => {
  const SHAPE = [
    [8, 7],
    [14, 7],
    [14, 13],
    [8, 13],
  ];
  const STROKE = [
    [64, 44, 0.5],
    [70, 48, 1],
  ];
  const FADE: [number, number][] = [
    [26, 8],
    [32, 14],
  ];
  const ART =
    '<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="5mm" viewBox="0 0 10 5"><path d="M0 0h10v5H0z"/></svg>';

  /** The bed with a shape on its first cell, a stroke on its last, a fade on its second and art on its sixth. */
  async function held(svg: string): Promise<Job> {
    const job = await jobOf(svg);
    const idAt = await namesAt(job);
    const art = bench.asset('art.svg', new TextEncoder().encode(ART));
    const node = (id: string, settings: Settings) => ({ id, kind: id, settings, bypassed: false });
    const mark = {
      id: 'm1',
      does: 'lay',
      plates: [],
      tintPercent: 50,
      widthMm: 1,
      edge: 'clean',
      points: STROKE,
    };
    const shapes = [{ id: 's1', pathMm: SHAPE }];
    const nodes = [
      ...job.graph.nodes,
      node('area', { shapes, regions: [idAt([12, 10]), idAt([66, 46])] }),
      node('hand-marks', { marks: [mark] }),
      node('plate-art', { asset: art, xMm: 26, yMm: 26, widthMm: 6, turnDeg: 0 }),
    ];
    const fade = { shape: 'linear' as const, from: { straw: 10 }, to: { straw: 90 }, pathMm: FADE };
    const colourways = [{ ...job.colourways[0]!, fades: { [idAt([30, 10])]: fade } }];
    return { ...job, graph: { ...job.graph, nodes }, colourways };
  }

  /** Ids of regions by place, mm. */
  async function namesAt(job: Job): Promise<(place: [number, number]) => string> {
    const { labels, ids } = await bench.value(job, 'closed-regions.regions', 'regions');
    return ([x, y]) => ids[labels.data[Math.floor(y * 10) * labels.width + Math.floor(x * 10)]! - 1]!;
  }

  const settingsOf = (job: Job, kind: string) => job.graph.nodes.find((node) => node.kind === kind)!.settings;
  const shapeOf = (job: Job) => (settingsOf(job, 'area').shapes as { pathMm: number[][] }[])[0]!.pathMm;
  const strokeOf = (job: Job) => (settingsOf(job, 'hand-marks').marks as { points: number[][] }[])[0]!.points;
  const fadeOf = (job: Job) => Object.values(job.colourways[0]!.fades!)[0]!.pathMm;
  const near = (found: readonly (readonly number[])[], wanted: readonly (readonly number[])[], mm: number) =>
    found.forEach((place, i) => {
      expect(Math.hypot(place[0]! - wanted[i]![0]!, place[1]! - wanted[i]![1]!)).toBeLessThan(mm);
    });
  const codes = ({ carry }: Redrawn) => carry.complaints.map(({ code }) => code);

  it('as the drawing as a whole moves, turns and grows', async () => {
    const again = await redrawn(
      await held(bed()),
      bed('', 'translate(40 30) rotate(2) scale(1.03) translate(-38.5 -31)'),
    );
    const turned = (places: readonly (readonly number[])[]) =>
      places.map(([x, y]) => {
        const [c, s] = [Math.cos((2 * Math.PI) / 180), Math.sin((2 * Math.PI) / 180)];
        const [dx, dy] = [1.03 * (x! - 38.5), 1.03 * (y! - 31)];
        return [40 + c * dx - s * dy, 30 + s * dx + c * dy];
      });
    near(shapeOf(again.job), turned(SHAPE), 0.3);
    near(strokeOf(again.job), turned(STROKE), 0.3);
    near(fadeOf(again.job), turned(FADE), 0.3);
    expect(strokeOf(again.job).map((place) => place[2])).toEqual([0.5, 1]);
    const { xMm, yMm, widthMm, turnDeg } = settingsOf(again.job, 'plate-art') as Record<string, number>;
    expect([widthMm, turnDeg]).toEqual([expect.closeTo(6.18, 1), expect.closeTo(2, 0)]);
    near([[xMm! + widthMm! / 2, yMm! + widthMm! / 4]], turned([[29, 27.5]]), 0.3);
    expect(codes(again)).toEqual([]);
  });

  it('as the region under it moves, where that one went farther than the rest', async () => {
    const moved = CELLS.with(0, '<path d="M7.4 6.2h12v11h-12z"/>');
    const again = await redrawn(await held(bed()), bed('', '', moved));
    near(
      shapeOf(again.job),
      SHAPE.map(([x, y]) => [x! + 1.4, y! + 1.2]),
      0.1,
    );
    near(strokeOf(again.job), STROKE, 0.1);
  });

  it('with the regions of an area: their ids stay, and pieces of them belong to it', async () => {
    const job = await held(bed());
    const [first] = settingsOf(job, 'area').regions as string[];
    const again = await redrawn(job, bed('<path d="M10.5 4v14"/>'));
    const regions = settingsOf(again.job, 'area').regions as string[];
    expect(regions).toContain(first);
    const idAt = await namesAt(again.job);
    for (const place of [
      [8, 10],
      [15, 10],
    ] as [number, number][])
      expect(regions).toContain(idAt(place));
  });

  it('and what lay on a region that is gone is kept and told of, with its place', async () => {
    const job = await held(bed());
    const again = await redrawn(job, bed('', '', CELLS.slice(0, 11)));
    near(strokeOf(again.job), STROKE, 0.1);
    expect(settingsOf(again.job, 'area').regions).toEqual(settingsOf(job, 'area').regions);
    expect(codes(again)).toEqual(expect.arrayContaining(['place-gone', 'area-region-gone']));
    const told = again.job.redraw!.left!.find(({ code }) => code === 'place-gone')!;
    expect(told.message).toMatch(/^A stroke of Hand marks lay on a region that is gone/);
    near([told.placeMm!], [[67, 46]], 0.2);
    expect(reopened(again.job)).toEqual(again.job);
  });

  it('and what comes to lie beside the sheet is kept and told of', async () => {
    const job = await held(bed());
    const off = { ...job, graph: { ...job.graph, nodes: [...job.graph.nodes] } };
    const marks = settingsOf(off, 'hand-marks').marks as { points: number[][] }[];
    marks[0]!.points = [[79.5, 59.5, 1]];
    const again = await redrawn(off, bed('', 'translate(1.5 1.5)'));
    expect(codes(again)).toContain('place-off-sheet');
    expect(strokeOf(again.job)[0]![0]).toBeGreaterThan(80);
  });

  it('and stays where it is when the drawing is another picture', async () => {
    const job = await held(bed());
    const rings = Array.from({ length: 9 }, (_, i) => `<circle cx="40" cy="30" r="${3 * i + 2}"/>`);
    const again = await redrawn(job, bed('', '', rings));
    expect([shapeOf(again.job), strokeOf(again.job), fadeOf(again.job)]).toEqual([SHAPE, STROKE, FADE]);
  });

  it('and comes back exactly with the old drawing; what was made since stays too', async () => {
    const job = await held(bed());
    const away = await redrawn(job, bed('<path d="M30 4v14"/>', 'translate(1 2) rotate(1)'));
    const marks = settingsOf(away.job, 'hand-marks').marks as { id: string }[];
    const since = { ...marks[0]!, id: 'm2' };
    marks.push(since);
    const back = await redrawn(away.job, bed());
    for (const kind of ['area', 'plate-art'])
      expect(settingsOf(back.job, kind)).toEqual(settingsOf(job, kind));
    expect(settingsOf(back.job, 'hand-marks').marks).toEqual([
      ...(settingsOf(job, 'hand-marks').marks as unknown[]),
      since,
    ]);
    expect(back.job.colourways[0]!.fades).toMatchObject(job.colourways[0]!.fades!);
  });
});
