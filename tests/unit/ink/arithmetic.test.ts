import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { arcTangent, cubeRoot, exp, log, power, sine } from '../../../src/ink/arithmetic.ts';

const near = (value: number, wanted: number): void => {
  expect(Math.abs(value - wanted)).toBeLessThanOrEqual(1e-14 * Math.abs(wanted) + Number.MIN_VALUE);
};

describe('arithmetic from + - x / alone', () => {
  it('has the exponential to 1e-14 from -30 to 30', () => {
    for (let x = -30; x <= 30; x += 0.37) near(exp(x), Math.exp(x));
  });

  it('lets the exponential run out at the ends instead of looping', () => {
    expect(exp(-1e9)).toBe(0);
    expect(exp(1e9)).toBe(Infinity);
  });

  it('has the logarithm to 1e-14 from 1e-12 to 1e6', () => {
    for (let x = 1e-12; x <= 1e6; x *= 1.7) near(log(x), Math.log(x));
    expect(log(1)).toBe(0);
  });

  it('has powers and cube roots to 1e-13', () => {
    for (let x = 1e-9; x <= 2; x *= 1.3) {
      expect(power(x, 0.74) / x ** 0.74).toBeCloseTo(1, 13);
      expect(power(x, 2.4) / x ** 2.4).toBeCloseTo(1, 13);
      expect(cubeRoot(x) / Math.cbrt(x)).toBeCloseTo(1, 14);
    }
  });

  it('has sines to 1e-14 and arc tangents to 1e-14', () => {
    for (let x = -1.6; x <= 1.6; x += 0.013) near(sine(x), Math.sin(x));
    for (let x = 1e-6; x <= 1e6; x *= 1.3) {
      near(arcTangent(x), Math.atan(x));
      near(arcTangent(-x), Math.atan(-x));
    }
    expect(arcTangent(0)).toBe(0);
  });

  it('takes 0 to the 0 as 1 and 0 to anything else as 0', () => {
    expect([power(0, 0), power(0, 0.74), power(5, 0), cubeRoot(0)]).toEqual([1, 0, 1, 0]);
  });
});

describe('what may reach a pixel', () => {
  it('calls no function whose last bit differs between engines', () => {
    const folder = new URL('../../../src/ink/', import.meta.url);
    const files = readdirSync(folder).filter((file) => file.endsWith('.ts'));
    expect(files.length).toBeGreaterThan(15);
    for (const file of files) {
      const code = readFileSync(new URL(file, folder), 'utf8').replaceAll(/\/\*.*?\*\//gs, '');
      expect(code, file).not.toMatch(/Math\.(pow|exp|expm1|log\w*|cbrt|tanh?|sinh?|cosh?|atan2?|hypot)\b/);
    }
  });
});
