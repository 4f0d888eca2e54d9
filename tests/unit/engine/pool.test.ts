import { describe, expect, it } from 'vitest';
import { PlanePool } from '../../../workers/engine/pool.ts';

describe('the plane pool', () => {
  it('counts the bytes that are held, and the most that ever were', () => {
    const pool = new PlanePool();
    const a = pool.take(100);
    const b = pool.take(50);
    expect(pool.liveBytes).toBe(150);
    pool.release(a);
    expect(pool.liveBytes).toBe(50);
    pool.release(b);
    expect([pool.liveBytes, pool.peakBytes]).toEqual([0, 150]);
  });

  it('keeps a buffer as long as anybody holds it', () => {
    const pool = new PlanePool();
    const buffer = pool.take(8);
    pool.retain(buffer);
    pool.release(buffer);
    expect(pool.take(8)).not.toBe(buffer);
    pool.release(buffer);
    expect(pool.take(8)).toBe(buffer);
  });

  it('reuses a buffer for its own size only', () => {
    const pool = new PlanePool();
    const buffer = pool.take(8);
    pool.release(buffer);
    expect(pool.take(9)).not.toBe(buffer);
  });

  it('counts a buffer that was made elsewhere', () => {
    const pool = new PlanePool();
    const foreign = new SharedArrayBuffer(16);
    pool.adopt(foreign);
    expect(pool.liveBytes).toBe(16);
    pool.release(foreign);
    expect(pool.liveBytes).toBe(0);
  });

  it('refuses to release what nobody holds', () => {
    const pool = new PlanePool();
    const buffer = pool.take(8);
    pool.release(buffer);
    expect(() => pool.release(buffer)).toThrow('nobody holds');
    expect(() => pool.retain(buffer)).toThrow('nobody holds');
  });
});
