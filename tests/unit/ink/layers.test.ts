import { describe, expect, it } from 'vitest';
import { solveLinear } from '../../../src/ink/linear-system.ts';
import { filmOf, layUpon } from '../../../src/ink/overprint.ts';
import { bodyOf, glareOf, readingOf } from '../../../src/ink/surface.ts';

const flat = (...values: number[]): Float64Array => Float64Array.from(values);

describe('the surface', () => {
  it('reads what the body reflects and back again', () => {
    for (const read of [0.041, 0.2, 0.5, 0.9, 1])
      expect(readingOf(bodyOf(read, 0.04), 0.04)).toBeCloseTo(read, 12);
  });

  it('throws most light back inside: a body of 0.5 reads far below 0.5', () => {
    expect(readingOf(0.5, 0)).toBeCloseTo((0.1 * 0.5) / (1 - 0.9 * 0.5), 12);
  });

  it('has its own glare on each kind, capped by the darkest band printed', () => {
    const solids = [flat(0.5, 0.9), flat(0.3, 0.2)];
    expect(glareOf('coated', solids)).toBe(0.005);
    expect(glareOf('uncoated', solids)).toBe(0.04);
    expect(glareOf('newsprint', solids)).toBe(0.025);
    expect(glareOf('uncoated', [...solids, flat(0.02, 0.6)])).toBeCloseTo(0.016, 12);
  });
});

describe('a film of ink', () => {
  const stock = flat(0.9, 0.8, 0.7);
  const solid = flat(0.1, 0.4, 0.6);
  const body = (read: Float64Array): Float64Array => read.map((value) => bodyOf(value, 0.005));

  it('on its own stock is its solid, whatever the opacity', () => {
    for (const opacity of [0, 0.005, 0.3, 0.85, 1]) {
      layUpon(body(stock), filmOf(solid, stock, opacity, 0.005), 1).forEach((value, band) => {
        expect(value).toBeCloseTo(bodyOf(solid[band]!, 0.005), 12);
      });
    }
  });

  it('of opacity 1 hides what is beneath, even taken up badly', () => {
    const film = filmOf(solid, stock, 1, 0.005);
    for (const ground of [flat(0.01, 0.01, 0.01), flat(0.9, 0.2, 0.5)]) {
      expect(layUpon(ground, film, 0.5)).toEqual(layUpon(body(stock), film, 1));
    }
  });

  it('of opacity 0 over black is black', () => {
    expect([...layUpon(flat(0, 0, 0), filmOf(solid, stock, 0, 0.005), 1)]).toEqual([0, 0, 0]);
  });

  it('over black reads its contrast ratio of its reading on stock, above the glare', () => {
    const film = filmOf(solid, stock, 0.3, 0.005);
    layUpon(flat(0, 0, 0), film, 1).forEach((value, band) => {
      expect(readingOf(value, 0.005)).toBeCloseTo(0.005 + 0.3 * (solid[band]! - 0.005), 12);
    });
  });

  it('not taken up at all leaves its stock as it is', () => {
    layUpon(body(stock), filmOf(solid, stock, 0, 0.005), 0).forEach((value, band) => {
      expect(value).toBeCloseTo(bodyOf(stock[band]!, 0.005), 12);
    });
  });

  it('on a perfect black stock stays finite', () => {
    const black = flat(0, 0, 0);
    for (const value of layUpon(body(black), filmOf(flat(0.8, 0.8, 0.8), black, 0.9, 0), 1)) {
      expect(value).toBeGreaterThan(0.5);
      expect(value).toBeLessThanOrEqual(1);
    }
  });
});

describe('linear systems', () => {
  it('are solved with a zero on the diagonal: y = 3, x + y = 5', () => {
    expect([...solveLinear([flat(0, 1, 3), flat(1, 1, 5)])!]).toEqual([2, 3]);
  });

  it('are refused when singular', () => {
    expect(solveLinear([flat(1, 1, 2), flat(1, 1, 3)])).toBeNull();
  });
});
