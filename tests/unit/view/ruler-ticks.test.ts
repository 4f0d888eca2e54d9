import { expect, test } from 'vitest';
import { niceStep, rulerTicks } from '../../../src/view/ruler-ticks.ts';

test.each([
  [0.07, 0.1],
  [1, 1],
  [1.1, 2],
  [3, 5],
  [5.5, 10],
  [64, 100],
])('at least %d gives %d', (least, step) => {
  expect(niceStep(least)).toBeCloseTo(step, 12);
});

test('numbers every 20 mm at the actual size, halves and ticks of 2 mm between', () => {
  const ticks = rulerTicks(100, 96 / 25.4, 400);
  const of = (wanted: string) => ticks.filter(({ rank }) => rank === wanted).map(({ mm }) => mm);
  expect(of('number')).toEqual([-20, 0, 20, 40, 60]);
  expect(of('half')).toEqual([-10, 10, 30, 50, 70]);
  expect(ticks[1]!.mm - ticks[0]!.mm).toBe(2);
  expect(ticks.find(({ mm }) => mm === 0)!.at).toBe(100);
});

test('numbers never stand closer than 64 px, ticks never closer than 6 px', () => {
  for (let pxPerMm = 0.02; pxPerMm < 130; pxPerMm *= 1.13) {
    const ticks = rulerTicks(-37, pxPerMm, 1000);
    const numbers = ticks.filter(({ rank }) => rank === 'number');
    expect(ticks[1]!.at - ticks[0]!.at).toBeGreaterThan(5.99);
    expect(numbers[1]!.at - numbers[0]!.at).toBeGreaterThan(63.9);
    expect(numbers[1]!.at - numbers[0]!.at).toBeLessThan(161);
  }
});
