import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '../../../src/graph/job.ts';
import { hashBytes } from '../../../src/graph/keys.ts';
import { reportSchema } from '../../../src/graph/report.ts';
import { Cancelled, type Client, type Rendered, startEngine } from '../../../workers/client.ts';
import { coverageOfPng, linePng } from '../support/files.ts';
import { defaultJob, type Settings, withRecipes, withSettings } from '../support/jobs.ts';
import { drawnPlane, isFlat, percentOf } from '../support/pictures.ts';

/** Rings on a sheet of 300 x 200 px: 38.1 x 25.4 mm at 200 ppi. */
const RINGS = linePng(
  drawnPlane(300, 200, (x, y) => {
    const off = Math.abs((Math.hypot(x - 150, y - 100) % 30) - 15);
    return Math.round(255 * Math.min(1, Math.max(0, 2.5 - off)));
  }),
);

async function started(workers: number): Promise<Client> {
  const client = await startEngine({ workers });
  await client.addAsset({ name: 'rings.png', bytes: RINGS });
  return client;
}

let client: Client;
/** What another engine makes of the same job; one worker. */
let other: Client;
beforeAll(async () => {
  [client, other] = await Promise.all([started(2), started(1)]);
});
afterAll(() => Promise.all([client.close(), other.close()]));

const TINTS = { r1: { straw: 30 }, r2: { straw: 100, brick: 40 }, r3: { brick: 85 } };

/** Grain on the plates, offset and paper in the proof. */
function ringsJob(settings: Record<string, Settings> = {}): Job {
  const job = withSettings(defaultJob({ asset: hashBytes(RINGS), ppi: 200 }), {
    'closed-regions': { gapMm: 0 },
    'register-offset': { offsets: { brick: { alongMm: 0.3, rotationDeg: 0.4 } } },
    ...settings,
  });
  return withRecipes(job, TINTS, { brick: 20 });
}

const render = (by: Client, job: Job, scale = 1): Promise<Rendered> =>
  by.run('render', { job, formats: ['png', 'proof'], scale });
const hashes = ({ files }: Rendered) =>
  Object.fromEntries(files.map(({ name, bytes }) => [name, hashBytes(bytes)]));
const plateOf = ({ files }: Rendered, name: string) =>
  coverageOfPng(files.find((file) => file.name === name)!.bytes);

describe('three plates, one of them empty (case 17)', () => {
  /** No line on any plate, and no tint of soot anywhere. */
  const job = () => ringsJob({ 'key-line': { tintPercentOf: { soot: 0 } } });

  it('are delivered at one size and one ppi', async () => {
    const rendered = await render(client, job());
    expect(rendered.report.plates.map(({ id, file, ppi }) => [id, file, ppi])).toEqual([
      ['straw', 'plate-1-straw.png', 200],
      ['brick', 'plate-2-brick.png', 200],
      ['soot', 'plate-3-soot.png', 200],
    ]);
    for (const { file } of rendered.report.plates) {
      const { width, height } = plateOf(rendered, file!);
      expect([width, height]).toEqual([300, 200]);
    }
  });

  it('are paper only where nothing prints, and the empty one is flagged', async () => {
    const rendered = await render(client, job());
    expect(isFlat(plateOf(rendered, 'plate-3-soot.png'), 0)).toBe(true);
    expect(rendered.report.plates.map(({ coveragePercent }) => coveragePercent === 0)).toEqual([
      false,
      false,
      true,
    ]);
    const empty = rendered.report.complaints.filter(({ code }) => code === 'plate-empty');
    expect(empty).toHaveLength(1);
    expect(empty[0]!.message).toMatch(/Plate 3 \(soot\) is empty/);
  });

  it('may all be empty', async () => {
    const bare = withRecipes(ringsJob({ 'key-line': { tintPercent: 0 } }), {}, {});
    const rendered = await render(client, bare);
    expect(rendered.report.complaints.filter(({ code }) => code === 'plate-empty')).toHaveLength(3);
    expect(rendered.files.map(({ name }) => name)).toContain('proof.png');
  });

  it('may all be solid', async () => {
    const solid = withRecipes(
      ringsJob({ 'key-line': { tintPercent: 100, fills: 'kept' } }),
      {},
      { straw: 100, brick: 100, soot: 100 },
    );
    const rendered = await render(client, solid);
    expect(rendered.report.plates.map(({ coveragePercent }) => coveragePercent)).toEqual([100, 100, 100]);
  });
});

describe('the report', () => {
  it('has its published shape', async () => {
    const { report } = await render(client, ringsJob());
    expect(reportSchema.safeParse({ ...report, peakBytes: 1 }).error).toBeUndefined();
  });

  it('tells the coverage of the plates as they are delivered', async () => {
    const rendered = await render(client, ringsJob());
    for (const { file, coveragePercent } of rendered.report.plates)
      expect(coveragePercent).toBeCloseTo(percentOf(plateOf(rendered, file!).data), 3);
  });

  it('tells size, regions and recipes', async () => {
    const { report } = await render(client, ringsJob());
    expect(report.drawing).toEqual({ width: 300, height: 200, ppi: 200, mm: [38.1, 25.4] });
    expect(report.regions.slice(0, 4).map(({ id, recipe }) => [id, recipe])).toEqual([
      ['r1', TINTS.r1],
      ['r2', TINTS.r2],
      ['r3', TINTS.r3],
      ['r4', { brick: 20 }],
    ]);
  });
});

describe('the same job gives the same bytes, grain included (case 22)', () => {
  it('with one worker, two or three', async () => {
    const third = await started(3);
    try {
      for (const scale of [1, 2]) {
        const wanted = hashes(await render(client, ringsJob(), scale));
        expect(hashes(await render(other, ringsJob(), scale))).toEqual(wanted);
        expect(hashes(await render(third, ringsJob(), scale))).toEqual(wanted);
      }
    } finally {
      await third.close();
    }
  });

  it('from the cache as when first made', async () => {
    const job = ringsJob({ 'plate-grain': { seed: 77 } });
    const first = await render(client, job);
    const again = await render(client, job);
    expect(hashes(again)).toEqual(hashes(first));
    expect(again.report.complaints).toEqual(first.report.complaints);
    expect(again.report.timings).toEqual({});
  });

  it('whatever simulation the proof goes through: the plates do not change with it', async () => {
    const still = hashes(await render(client, ringsJob({ 'register-offset': { offsets: {} } })));
    const moved = hashes(await render(client, ringsJob()));
    expect({ ...moved, 'proof.png': '' }).toEqual({ ...still, 'proof.png': '' });
    expect(moved['proof.png']).not.toBe(still['proof.png']);
  });

  it('and another seed gives other bytes', async () => {
    const seeded = hashes(await render(client, ringsJob({ 'plate-grain': { seed: 5 } })));
    expect(seeded['plate-2-brick.png']).not.toBe(
      hashes(await render(client, ringsJob()))['plate-2-brick.png'],
    );
  });
});

describe('cancelling (case 23)', () => {
  /** A job of which only the drawing is known. */
  const fresh = (seed: number) => ringsJob({ 'clean-line': { speckMm2: 0.03 + 0.001 * seed } });

  const cancelledAt = (node: string, job: Job): Promise<Rendered> => {
    const stop = new AbortController();
    const onProgress = (progress: { node: string }) => {
      if (progress.node === node) stop.abort();
    };
    return client.run(
      'render',
      { job, formats: ['png', 'proof'], scale: 1 },
      { signal: stop.signal, onProgress },
    );
  };

  it.each([
    ['line-drawing', ringsJob({ 'line-drawing': { ppi: 211 } })],
    ['closed-regions', fresh(12)],
    ['plate-grain', fresh(13)],
    ['proof', fresh(14)],
  ])('at %s ends the run, and the next run gives what it would have given', async (node, job) => {
    await expect(cancelledAt(node, job)).rejects.toThrow(Cancelled);
    expect(hashes(await render(client, job))).toEqual(hashes(await render(other, job)));
  });

  it('before the run has begun ends it at once', async () => {
    const signal = AbortSignal.abort();
    await expect(client.run('render', { job: fresh(15), formats: [], scale: 1 }, { signal })).rejects.toThrow(
      Cancelled,
    );
  });

  it('leaves no promise stuck when runs follow one another quickly, and only the last one ends well', async () => {
    const runs = [21, 22, 23, 24].map((seed, i) => {
      const stop = new AbortController();
      const run = client.run(
        'render',
        { job: fresh(seed), formats: ['png'], scale: 1 },
        { signal: stop.signal },
      );
      if (i < 3) setTimeout(() => stop.abort(), 5 * i);
      return run.then(
        (rendered) => hashes(rendered),
        (error: Error) => error.name,
      );
    });
    const ends = await Promise.all(runs);
    expect(ends.slice(0, 3)).toEqual(['Cancelled', 'Cancelled', 'Cancelled']);
    expect(ends[3]).toHaveProperty('plate-1-straw.png');
  });

  it('does no harm after the run has ended', async () => {
    const stop = new AbortController();
    const options = { signal: stop.signal };
    const first = await client.run('render', { job: ringsJob(), formats: ['png'], scale: 1 }, options);
    stop.abort();
    const second = await client.run('render', { job: ringsJob(), formats: ['png'], scale: 1 });
    expect(hashes(second)).toEqual(hashes(first));
  });

  it('gives back the memory of what was under way', async () => {
    await render(client, fresh(31));
    const { liveBytes } = await client.memory();
    const onOtherPaper = withSettings(fresh(31), { 'paper-stock': { seed: 99 } });
    await expect(cancelledAt('proof', onOtherPaper)).rejects.toThrow(Cancelled);
    expect((await client.memory()).liveBytes).toBe(liveBytes);
  });
});

describe('a job that cannot run says why', () => {
  const without = (kind: string): Job => {
    const job = ringsJob();
    const nodes = job.graph.nodes.filter((node) => node.kind !== kind);
    const ids = new Set(nodes.map(({ id }) => id));
    const wires = job.graph.wires.filter(({ from, to }) => ids.has(from.node) && ids.has(to.node));
    return { ...job, graph: { nodes, wires } };
  };

  it('when it has no Press file', async () => {
    await expect(render(client, without('press-file'))).rejects.toThrow(/needs a Press file/);
  });

  it('when an input has no wire', async () => {
    await expect(render(client, without('ink-set'))).rejects.toThrow(/nothing wired to its input "inks"/);
  });

  it('but renders without a Proof, with a complaint', async () => {
    const { files, report } = await render(client, without('proof'));
    expect(files.map(({ name }) => name)).not.toContain('proof.png');
    expect(report.complaints.map(({ code }) => code)).toContain('no-proof');
  });

  it('and complains of a simulation that would be printed', async () => {
    const job = ringsJob();
    const wires = job.graph.wires.map((wire) =>
      wire.to.node === 'press-file' ? { ...wire, from: { node: 'register-offset', port: 'plates' } } : wire,
    );
    const { report } = await render(client, { ...job, graph: { ...job.graph, wires } });
    const found = report.complaints.filter(({ severity }) => severity === 'error');
    expect(found.map(({ code }) => code)).toEqual(['simulation-delivered']);
  });
});
