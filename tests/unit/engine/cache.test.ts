import { describe, expect, it } from 'vitest';
import { type Outputs, releaseOutputs, StepCache } from '../../../workers/engine/cache.ts';
import { PlanePool } from '../../../workers/engine/pool.ts';

const SILENT = { complaints: [], ms: 1 };

/** Outputs of `bytes` bytes that only the cache will hold. */
function put(pool: PlanePool, cache: StepCache, key: string, bytes: number): void {
  const data = new Uint8Array(pool.take(bytes));
  const mask = { width: bytes, height: 1, data };
  const outputs: Outputs = { area: { type: 'area', mask, ppi: 600, mm: [1, 1] } };
  cache.put(key, outputs, SILENT);
  releaseOutputs(pool, outputs);
  cache.trim();
}

describe('the step cache', () => {
  it('lets the least recently used go when the budget is passed', () => {
    const pool = new PlanePool();
    const cache = new StepCache(pool, 250);
    put(pool, cache, 'a', 100);
    put(pool, cache, 'b', 100);
    cache.get('a');
    put(pool, cache, 'c', 100);
    expect(['a', 'b', 'c'].filter((key) => cache.has(key))).toEqual(['a', 'c']);
    expect(pool.liveBytes).toBe(200);
  });

  it('holds nothing larger than the whole budget', () => {
    const pool = new PlanePool();
    const cache = new StepCache(pool, 50);
    put(pool, cache, 'a', 100);
    expect(cache.has('a')).toBe(false);
    expect(pool.liveBytes).toBe(0);
  });

  it('counts a plane that two results share once', () => {
    const pool = new PlanePool();
    const cache = new StepCache(pool, 150);
    const data = new Uint8Array(pool.take(100));
    const mask = { width: 100, height: 1, data };
    const outputs: Outputs = { area: { type: 'area', mask, ppi: 600, mm: [1, 1] } };
    cache.put('a', outputs, SILENT);
    cache.put('b', { ...outputs }, SILENT);
    releaseOutputs(pool, outputs);
    cache.trim();
    expect([cache.has('a'), cache.has('b'), pool.liveBytes]).toEqual([true, true, 100]);
  });

  it('remembers what results that went had to say', () => {
    const pool = new PlanePool();
    const cache = new StepCache(pool, 10);
    const complaint = { code: 'size-assumed', severity: 'warning' as const, message: 'no size' };
    cache.put('a', {}, { complaints: [complaint], ms: 12 });
    put(pool, cache, 'b', 100);
    expect(cache.memory('a')).toEqual({ complaints: [complaint], ms: 12 });
    expect(cache.memory('never')).toBeUndefined();
  });
});
