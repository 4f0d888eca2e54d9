import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Cancelled, cancelFlag, raise } from '../../../workers/engine/cancel.ts';
import { Crew } from '../../../workers/engine/crew.ts';
import type { SpawnedWorker } from '../../../workers/engine/host/spawned-worker.ts';

const spawned: SpawnedWorker[] = [];

vi.mock('#host/spawn-crew', async (original) => {
  const { spawnCrew } = await original<typeof import('#host/spawn-crew')>();
  return {
    spawnCrew: () => {
      const worker = spawnCrew();
      spawned.push(worker);
      return worker;
    },
  };
});

function plane(width: number, height: number) {
  return { width, height, data: new Uint8Array(new SharedArrayBuffer(width * height)) };
}

/** A table that adds one: every row that was worked on can be told. */
const PLUS_ONE = Uint8Array.from({ length: 256 }, (_, v) => (v + 1) & 255);

describe('a crew', () => {
  let crew: Crew;
  let messages: string[];

  beforeEach(() => {
    spawned.length = 0;
    messages = [];
    crew = new Crew(2, (message) => messages.push(message));
  });

  afterEach(() => crew.close());

  it('works through every row exactly as one worker would', async () => {
    const from = plane(37, 1001);
    from.data.forEach((_, i) => {
      from.data[i] = i;
    });
    const to = plane(37, 1001);
    await crew.bands('toneTable', { from, to, table: PLUS_ONE }, 1001, cancelFlag());
    expect(to.data).toEqual(from.data.map((value) => value + 1));
  });

  it('replaces a worker that dies and does its work again', async () => {
    const from = plane(2000, 4000);
    const to = plane(2000, 4000);
    await crew.bands('toneTable', { from, to, table: PLUS_ONE }, 1, cancelFlag());
    const work = crew.bands('toneTable', { from, to, table: PLUS_ONE }, 4000, cancelFlag());
    await spawned[0]!.terminate();
    await work;
    expect(to.data.every((value) => value === 1)).toBe(true);
    await crew.bands('toneTable', { from: to, to: from, table: PLUS_ONE }, 4000, cancelFlag());
    expect(from.data.every((value) => value === 2)).toBe(true);
    expect(messages).toEqual(['A worker stopped and was replaced; its work is done again.']);
    expect(spawned).toHaveLength(3);
  });

  it('stops at the flag, and works on afterwards', async () => {
    const from = plane(1000, 20_000);
    const to = plane(1000, 20_000);
    const flag = cancelFlag();
    const work = crew.bands('toneTable', { from, to, table: PLUS_ONE }, 20_000, flag);
    raise(flag);
    await expect(work).rejects.toBeInstanceOf(Cancelled);
    await crew.bands('toneTable', { from, to, table: PLUS_ONE }, 20_000, cancelFlag());
    expect(to.data.every((value) => value === 1)).toBe(true);
  });

  it('refuses work whose flag is up already', async () => {
    const flag = cancelFlag();
    raise(flag);
    await expect(crew.whole('mean', { data: new Uint8Array(4) }, flag)).rejects.toBeInstanceOf(Cancelled);
  });

  it('gives back what a job gives, and what it throws', async () => {
    const data = Uint8Array.of(1, 2, 3, 6);
    expect(await crew.whole('mean', { data }, cancelFlag())).toBe(3);
    const picture = {
      bytes: new TextEncoder().encode('no picture'),
      name: 'notes.txt',
      options: { vectorPpi: 600 },
    };
    await expect(crew.alone('openPicture', picture, cancelFlag(), 60_000)).rejects.toThrow(/^notes\.txt/);
  });

  it('ends a file that takes too long to open, with its worker', async () => {
    const circle = '<svg xmlns="http://www.w3.org/2000/svg" width="1in" height="1in"><circle r="9"/></svg>';
    const picture = {
      bytes: new TextEncoder().encode(circle),
      name: 'slow.svg',
      options: { vectorPpi: 600 },
    };
    await expect(crew.alone('openPicture', picture, cancelFlag(), 1)).rejects.toThrow('took longer than');
    await expect(spawned[0]!.died).resolves.toMatch(/exit/);
  });

  it('says so when workers stop again and again', async () => {
    const job = crew.whole('mean', { data: new Uint8Array(200_000_000) }, cancelFlag());
    const killed = new Set<SpawnedWorker>();
    const killer = setInterval(() => {
      for (const worker of spawned) if (!killed.has(worker)) void worker.terminate();
      for (const worker of spawned) killed.add(worker);
    }, 1);
    await expect(job)
      .rejects.toThrow('for want of memory')
      .finally(() => clearInterval(killer));
  });
});
