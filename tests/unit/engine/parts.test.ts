import { describe, expect, it } from 'vitest';
import type { Complaint } from '../../../src/graph/complaint.ts';
import { StepCache } from '../../../workers/engine/cache.ts';
import { partsOf } from '../../../workers/engine/parts.ts';
import type { Step } from '../../../workers/engine/plan.ts';
import { PlanePool } from '../../../workers/engine/pool.ts';
import type { AreaValue } from '../../../workers/engine/values.ts';

const MEGABYTE = 1024 * 1024;

function bench(budget = 8 * MEGABYTE) {
  const pool = new PlanePool();
  const cache = new StepCache(pool, budget);
  let made = 0;
  const make = async (): Promise<AreaValue> => {
    made++;
    const mask = { width: 1, height: MEGABYTE, data: new Uint8Array(pool.take(MEGABYTE)) };
    return { type: 'area', mask, ppi: 600, mm: [1, 1] };
  };
  /** Runs one step that wants a part, as the engine does: what it took it lets go of at the end. */
  const run = async (input: string, settings: unknown, says?: Complaint) => {
    const step: Step = { does: 'name-regions', key: 'k', inputs: { from: { key: input, port: 'value' } } };
    const complaints: Complaint[] = [];
    const { part, letGo } = partsOf(step, { pool, cache }, complaints);
    let taken: SharedArrayBuffer | null = null;
    const value = await part('mask', settings, async () => {
      if (says) complaints.push(says);
      const area = await make();
      taken = area.mask.data.buffer;
      return area;
    });
    if (taken) pool.release(taken);
    letGo();
    return { value, complaints };
  };
  return { pool, run, made: () => made };
}

describe('a part of a step', () => {
  it('is made once for the same inputs and settings', async () => {
    const { run, made } = bench();
    const first = await run('a', { gap: 1 });
    const again = await run('a', { gap: 1 });
    expect(again.value).toBe(first.value);
    expect(made()).toBe(1);
  });

  it('is made again for other settings or other inputs', async () => {
    const { run, made } = bench();
    await run('a', { gap: 1 });
    await run('a', { gap: 2 });
    await run('b', { gap: 1 });
    expect(made()).toBe(3);
  });

  it('says again what it said when it was made', async () => {
    const { run } = bench();
    const says: Complaint = { code: 'odd', severity: 'note', message: 'Odd.' };
    expect((await run('a', {}, says)).complaints).toEqual([says]);
    expect((await run('a', {}, says)).complaints).toEqual([says]);
  });

  it('stays in memory with the cache alone, and leaves when the budget is spent', async () => {
    const { pool, run, made } = bench(MEGABYTE);
    await run('a', {});
    expect(pool.liveBytes).toBe(MEGABYTE);
    await run('b', {});
    expect(pool.liveBytes).toBe(MEGABYTE);
    await run('a', {});
    expect(made()).toBe(3);
  });
});
