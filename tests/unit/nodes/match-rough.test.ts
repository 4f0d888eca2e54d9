import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '../../../src/graph/job.ts';
import { withRough } from '../../../src/graph/with-rough.ts';
import { differenceOf } from '../../../src/ink/difference.ts';
import { labOfXyz } from '../../../src/ink/lab.ts';
import { xyzOfHex } from '../../../src/ink/srgb.ts';
import { cancelFlag } from '../../../workers/engine/cancel.ts';
import { encodePng } from '../../../workers/files/encode-png.ts';
import { match } from '../../../workers/tasks/match.ts';
import { Bench } from '../support/engine.ts';
import { defaultJob, type Settings, withSettings } from '../support/jobs.ts';
import { drawnPlane } from '../support/pictures.ts';

const PPI = 254;
const WIDTH = 240;
const HEIGHT = 180;

let bench: Bench;
beforeAll(() => {
  bench = new Bench();
});
afterAll(() => bench.close());

/** Four fields parted by a cross of line, in one frame of line. */
const LINE = drawnPlane(WIDTH, HEIGHT, (x, y) =>
  Math.abs(x - 120) < 3 || Math.abs(y - 90) < 3 || x < 3 || y < 3 || x >= WIDTH - 3 || y >= HEIGHT - 3
    ? 255
    : 0,
);
const FIELDS = ['#e8a080', '#7fa8a0', '#9a7fa8', '#ffffff'] as const;
const fieldAt = (x: number, y: number) => (x < 0.5 ? 0 : 1) + (y < 0.5 ? 0 : 2);

type Rgba = readonly [number, number, number, number];
const rgbOf = (hex: string): Rgba => [
  Number.parseInt(hex.slice(1, 3), 16),
  Number.parseInt(hex.slice(3, 5), 16),
  Number.parseInt(hex.slice(5, 7), 16),
  255,
];

/** A rough by what it shows at shares of its width and height. */
async function rough(width: number, height: number, at: (x: number, y: number) => Rgba): Promise<string> {
  const data = new Uint8Array(width * height * 4);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) data.set(at((x + 0.5) / width, (y + 0.5) / height), (y * width + x) * 4);
  return bench.asset('rough.png', await encodePng({ width, height, bands: 4, data, ppi: 72 }));
}

const flat = (x: number, y: number) => rgbOf(FIELDS[fieldAt(x, y)]!);

function jobOf(asset: string, settings: Settings = {}): Job {
  const drawing = bench.drawing(LINE);
  const job = withSettings(defaultJob({ asset: drawing, ppi: PPI }), {
    'closed-regions': { gapMm: 0 },
    'paper-stock': { lab: [100, 0, 0] },
  });
  return withSettings(withRough(job, 'rough.png', asset), { 'match-rough': settings });
}

const context = () => ({ engine: bench.engine, flag: cancelFlag(), onProgress: () => {} });
const labOf = (hex: string) => labOfXyz(xyzOfHex(hex));
/** What the field at shares of the sheet wants, as far from the colour it was given. */
const found = async (job: Job, alternatives = 0) => {
  const matches = await match({ job, alternatives }, context());
  const at = (field: number) => {
    const [x, y] = [field % 2 === 0 ? 6 : 18, field < 2 ? 4.5 : 13.5];
    const near = matches.regions.find(({ anchorMm }) => Math.hypot(anchorMm[0] - x, anchorMm[1] - y) < 3);
    return near && { ...near, off: differenceOf(near.wantedLab, labOf(FIELDS[field]!)) };
  };
  return { matches, at };
};

describe('colours wanted by a rough', () => {
  it('are those of each region', async () => {
    const { at, matches } = await found(jobOf(await rough(WIDTH, HEIGHT, flat)));
    expect(matches.regions).toHaveLength(4);
    for (const field of [0, 1, 2, 3]) expect(at(field)!.off).toBeLessThan(0.02);
    expect(matches.fit).toEqual({ scalePercent: 100, shiftMm: [0, 0], turnDeg: 0 });
  });

  it('are found on a smaller picture, with noise and lines of its own', async () => {
    let state = 7;
    const noise = () => {
      state = (Math.imul(state, 1103515245) + 12345) >>> 0;
      return ((state >>> 16) % 17) - 8;
    };
    const drawn = await rough(WIDTH / 2, HEIGHT / 2, (x, y) => {
      if (Math.abs(x - 0.25) < 0.01 || Math.abs(x - y) < 0.01) return [30, 28, 25, 255];
      const [r, g, b] = flat(x, y);
      const held = (value: number) => Math.min(255, Math.max(0, value + noise()));
      return [held(r), held(g), held(b), 255];
    });
    const { at } = await found(jobOf(drawn));
    for (const field of [0, 1, 2]) expect(at(field)!.off).toBeLessThan(2.5);
  });

  it('are found where the rough is smaller, moved and turned', async () => {
    const [scale, shift, turn] = [0.9, 0.03, (2 * Math.PI) / 180];
    const moved = await rough(WIDTH, HEIGHT, (x, y) => {
      const [dx, dy] = [(x - 0.5 - shift) * WIDTH, (y - 0.5 - shift) * HEIGHT];
      const [u, v] = [
        (Math.cos(turn) * dx + Math.sin(turn) * dy) / scale / WIDTH + 0.5,
        (-Math.sin(turn) * dx + Math.cos(turn) * dy) / scale / HEIGHT + 0.5,
      ];
      return u < 0 || v < 0 || u > 1 || v > 1 ? [255, 255, 255, 255] : flat(u, v);
    });
    const { at, matches } = await found(jobOf(moved));
    for (const field of [0, 1, 2]) expect(at(field)!.off).toBeLessThan(0.02);
    expect(matches.complaints.map(({ code }) => code)).not.toContain('rough-unfit');
  });

  it('are found where the rough has another shape with margins', async () => {
    const wide = await rough(400, HEIGHT, (x, y) => {
      const u = ((x - 0.5) * 400) / WIDTH + 0.5;
      return u < 0 || u > 1 ? [255, 255, 255, 255] : flat(u, y);
    });
    const { at } = await found(jobOf(wide));
    for (const field of [0, 1, 2]) expect(at(field)!.off).toBeLessThan(0.02);
  });

  it('are the same when the place that was found is typed', async () => {
    const moved = await rough(WIDTH, HEIGHT, (x, y) => flat(x * 0.9 + 0.08, y * 0.9 + 0.02));
    const { matches } = await found(jobOf(moved));
    const { scalePercent, shiftMm, turnDeg } = matches.fit;
    expect(shiftMm[0]).not.toBe(0);
    const typed = { fit: 'set', scalePercent, shiftXMm: shiftMm[0], shiftYMm: shiftMm[1], turnDeg };
    const again = await found(jobOf(moved, typed));
    expect(again.matches).toEqual(matches);
  });

  it('come from a rough of another shape that is stretched, and that is said', async () => {
    const wide = await rough(400, HEIGHT, flat);
    const { at, matches } = await found(jobOf(wide, { fit: 'frame' }));
    for (const field of [0, 1, 2]) expect(at(field)!.off).toBeLessThan(0.02);
    expect(matches.complaints.find(({ code }) => code === 'rough-shape')?.message).toMatch(
      /\(2\.22 to 1\) than the drawing \(1\.33 to 1\); it was stretched/,
    );
  });

  it('may come from a rough laid on upside down', async () => {
    const turned = await rough(WIDTH, HEIGHT, (x, y) => flat(1 - x, 1 - y));
    const { at } = await found(jobOf(turned, { fit: 'set', turnDeg: 180 }));
    for (const field of [0, 1, 2]) expect(at(field)!.off).toBeLessThan(0.02);
  });

  it('are those of the screen where white is a white of its own', async () => {
    const job = withSettings(jobOf(await rough(WIDTH, HEIGHT, flat), { white: 'screen' }), {
      'paper-stock': { lab: [90, 2, 8] },
    });
    const { at } = await found(job);
    for (const field of [0, 1, 2, 3]) expect(at(field)!.off).toBeLessThan(0.02);
    expect(at(3)!.distance).toBeGreaterThan(5);
    const onPaper = await found(withSettings(job, { 'match-rough': { white: 'paper' } }));
    expect(differenceOf(onPaper.at(3)!.wantedLab, [90, 2, 8])).toBeLessThan(0.02);
    expect(onPaper.at(3)!.recipe).toEqual({});
  });

  it('take the place that is typed', async () => {
    const drawn = await rough(WIDTH, HEIGHT, flat);
    const { at } = await found(jobOf(drawn, { fit: 'set', shiftXMm: 12 }));
    expect(differenceOf(at(1)!.wantedLab, labOf(FIELDS[0]))).toBeLessThan(0.02);
  });

  it('are none where the rough is transparent, and those regions print as the colourway says', async () => {
    const holed = await rough(WIDTH, HEIGHT, (x, y) => (fieldAt(x, y) === 1 ? [0, 0, 0, 0] : flat(x, y)));
    const job = jobOf(holed);
    const { at, matches } = await found(job);
    expect(at(1)).toBeUndefined();
    expect(matches.bare).toHaveLength(1);
    expect(matches.complaints.find(({ code }) => code === 'rough-bare')).toMatchObject({
      severity: 'note',
      message: expect.stringContaining(`1 of 4 regions are not painted in the rough (${matches.bare[0]})`),
    });
    const others = { ...job, colourways: [{ ...job.colourways[0]!, others: { soot: 55 } }] };
    const { recipes } = await bench.value(others, 'region-tints.recipes', 'recipes');
    expect(recipes.filter((recipe) => recipe?.soot === 55)).toHaveLength(1);
  });

  it('give way to the recipes of the colourway', async () => {
    const job = jobOf(await rough(WIDTH, HEIGHT, flat));
    const { matches } = await found(job);
    const [first] = matches.regions;
    const withOwn = (ids: readonly string[]) => {
      const recipes = Object.fromEntries(ids.map((id) => [id, { soot: 35 }]));
      return { ...job, colourways: [{ ...job.colourways[0]!, recipes }] };
    };
    const one = await bench.evaluate(withOwn([first!.id]), 'region-tints.recipes', 'recipes');
    expect(one.value.recipes.filter((recipe) => recipe?.soot === 35)).toHaveLength(1);
    expect(one.complaints.map(({ code }) => code)).not.toContain('rough-unused');
    const all = withOwn(matches.regions.map(({ id }) => id));
    const { complaints } = await bench.evaluate(all, 'region-tints.recipes', 'recipes');
    expect(complaints.map(({ code }) => code)).toContain('rough-unused');
  });

  it('stand for bare paper where the rough is white', async () => {
    const { at } = await found(jobOf(await rough(WIDTH, HEIGHT, flat)));
    expect(at(3)!.recipe).toEqual({});
    expect(at(3)!.distance).toBeLessThan(0.01);
  });

  it('come with other recipes, each in other plates and farther off', async () => {
    const { at } = await found(jobOf(await rough(WIDTH, HEIGHT, flat)), 3);
    const { alternatives, recipe } = at(0)!;
    expect(alternatives).toHaveLength(3);
    const sets = [recipe, ...alternatives!.map((each) => each.recipe)].map((each) =>
      Object.keys(each).sort().join(),
    );
    expect(new Set(sets).size).toBe(4);
  });

  it('are the same for any number of workers', async () => {
    const other = new Bench(1);
    const data = new Uint8Array(WIDTH * HEIGHT * 4);
    for (let i = 0; i < WIDTH * HEIGHT; i++)
      data.set(flat(((i % WIDTH) + 0.5) / WIDTH, (Math.floor(i / WIDTH) + 0.5) / HEIGHT), i * 4);
    const png = await encodePng({ width: WIDTH, height: HEIGHT, bands: 4, data, ppi: 72 });
    const asset = bench.asset('rough.png', png);
    other.asset('rough.png', png);
    other.drawing(LINE);
    const job = jobOf(asset);
    const [one, two] = [
      await bench.value(job, 'match-rough.recipes', 'recipes'),
      await other.value(job, 'match-rough.recipes', 'recipes'),
    ];
    await other.close();
    expect(two).toEqual(one);
  });
});

describe('a rough that cannot be', () => {
  it.each([
    ['checks', (x: number, y: number) => ((Math.floor(x * 40) + Math.floor(y * 30)) % 2 === 0 ? 255 : 40)],
    ['a gradient', (x: number, y: number) => Math.floor(127 * (x + y))],
  ])('is told when it is another picture: %s', async (_, light) => {
    const other = await rough(WIDTH, HEIGHT, (x, y) => [light(x, y), 60, 255 - light(x, y), 255]);
    const { matches } = await found(jobOf(other));
    expect(matches.complaints.map(({ code }) => code)).toContain('rough-unfit');
    expect(matches.fit).toEqual({ scalePercent: 100, shiftMm: [0, 0], turnDeg: 0 });
    expect(matches.regions).toHaveLength(4);
  });

  it('is told when it lies beside the drawing', async () => {
    const { matches } = await found(jobOf(await rough(60, 45, flat), { fit: 'set', shiftXMm: 60 }));
    expect(matches.regions).toEqual([]);
    expect(matches.complaints.find(({ code }) => code === 'rough-bare')!.severity).toBe('error');
  });

  it.each([
    ['black all over', (): Rgba => [0, 0, 0, 255], '#000000'],
    [
      'the line alone',
      (x: number, y: number): Rgba =>
        Math.min(x % 0.5, y % 0.5) < 0.01 ? [0, 0, 0, 255] : [255, 255, 255, 255],
      '#ffffff',
    ],
  ] as const)('is told when it is %s', async (_, paint, colour) => {
    const { matches } = await found(jobOf(await rough(WIDTH, HEIGHT, paint)));
    const told = matches.complaints.find(({ code }) => code === 'rough-one-colour');
    expect(told).toMatchObject({ severity: 'warning', message: expect.stringContaining(colour) });
    expect(matches.regions).toHaveLength(4);
  });

  it('is refused when it is transparent all over', async () => {
    const job = jobOf(await rough(60, 60, () => [0, 0, 0, 0]));
    await expect(match({ job }, context())).rejects.toThrow(/transparent all over/);
  });

  it('is refused when it is no picture', async () => {
    const job = jobOf(bench.asset('notes.txt', new TextEncoder().encode('sow in March')));
    await expect(match({ job }, context())).rejects.toThrow(/notes\.txt/);
  });

  it('is asked for when there is none', async () => {
    const job = withSettings(jobOf(await rough(60, 60, flat)), { 'match-rough': { asset: null } });
    await expect(match({ job }, context())).rejects.toThrow(/has no rough yet/);
  });

  it('may be one pixel: then all is of its colour', async () => {
    const { matches } = await found(jobOf(await rough(1, 1, () => rgbOf(FIELDS[0])), { fit: 'frame' }));
    for (const { wantedLab } of matches.regions)
      expect(differenceOf(wantedLab, labOf(FIELDS[0]))).toBeLessThan(0.02);
  });

  it('is refused where rules of the search contradict one another', async () => {
    const job = jobOf(await rough(60, 60, flat), {
      stepPercent: 1,
      mostInks: 12,
      leastPercent: 1,
      mostPercent: 100,
    });
    await expect(match({ job }, context())).rejects.toThrow(/take a larger step or fewer inks/);
    const crossed = jobOf(await rough(60, 60, flat), { leastPercent: 60, mostPercent: 40 });
    await expect(match({ job: crossed }, context())).rejects.toThrow(/palest tint, 60 %.*darkest, 40 %/);
  });
});

describe('a job that gets a rough', () => {
  it('has one more node, wired between inks, regions and tints', () => {
    const job = withRough(defaultJob({}), 'my rough.png', 'a'.repeat(64));
    const node = job.graph.nodes.find(({ kind }) => kind === 'match-rough')!;
    expect(node.settings.asset).toBe('a'.repeat(64));
    const into = job.graph.wires.filter(({ to }) => to.node === node.id).map(({ to }) => to.port);
    expect(into.sort()).toEqual(['inks', 'paper', 'regions']);
    expect(job.graph.wires.find(({ from }) => from.node === node.id)!.to).toEqual({
      node: 'region-tints',
      port: 'recipes',
    });
    expect(job.assets['a'.repeat(64)]).toEqual({ file: 'my rough.png' });
  });

  it('keeps the node it has', () => {
    const once = withRough(defaultJob({}), 'a.png', 'a'.repeat(64));
    const twice = withRough(once, 'b.png', 'b'.repeat(64));
    expect(twice.graph.nodes).toHaveLength(once.graph.nodes.length);
    expect(twice.graph.nodes.find(({ kind }) => kind === 'match-rough')!.settings.asset).toBe('b'.repeat(64));
  });

  it('is refused where nothing takes recipes', () => {
    const job = defaultJob({});
    const nodes = job.graph.nodes.filter(({ kind }) => kind !== 'region-tints');
    expect(() => withRough({ ...job, graph: { ...job.graph, nodes } }, 'a.png', 'a'.repeat(64))).toThrow(
      /needs a Region tints/,
    );
  });
});
