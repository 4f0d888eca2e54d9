import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shortcuts } from '../../../src/app/registries.ts';
import { heldAs, pressOf } from '../../../src/view/held-as.ts';
import { strokeOutline } from '../../../src/view/surface-tools/stroke-outline.ts';
import { strokePoints } from '../../../src/view/surface-tools/stroke-points.ts';
import type { DraftPoint } from '../../../src/view/surface-tools/surface-store.ts';
import { distanceToThing, nearestThing, type Thing } from '../../../src/view/surface-tools/things.ts';

describe('how a hand presses', () => {
  const event = (pointerType: string, pressure: number, tiltX = 0, tiltY = 0) =>
    pressOf({ x: 0, y: 0, ...heldAs({ pointerType, pressure, tiltX, tiltY }) });

  it('is half for a mouse, and for a finger that was not felt', () => {
    expect([event('mouse', 0.5), event('mouse', 0), event('touch', 0), event('touch', 1)]).toEqual([
      0.5, 0.5, 0.5, 0.5,
    ]);
    expect(event('touch', 0.3)).toBe(0.3);
  });

  it('is what a pen tells, twice as much where it is laid flat, and never above all', () => {
    expect([event('pen', 0.25), event('pen', 0.25, 20), event('pen', 0.25, 0, -70)]).toEqual([
      0.25, 0.25, 0.5,
    ]);
    expect(event('pen', 0.9, 80)).toBe(1);
  });
});

describe('the places of a stroke', () => {
  it('are few where hand and pressure run even, and the ends stay', () => {
    const draft = Array.from({ length: 101 }, (_, i): DraftPoint => [i / 10, 5, i / 100]);
    expect(strokePoints(draft, 2, 0.05)).toEqual([
      [0, 5, 0],
      [10, 5, 1],
    ]);
  });

  it('keep a swelling of the line that its middle does not show', () => {
    const draft = Array.from({ length: 11 }, (_, i): DraftPoint => [i, 5, i === 5 ? 1 : 0.5]);
    expect(strokePoints(draft, 2, 0.05)).toContainEqual([5, 5, 1]);
    expect(strokePoints(draft, 0.1, 0.05)).toHaveLength(2);
  });

  it('never move line or rim farther than the tolerance', () => {
    const place = fc.tuple(
      fc.double({ min: 0, max: 50, noNaN: true }),
      fc.double({ min: 0, max: 50, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
    );
    const check = fc.property(fc.array(place, { minLength: 2, maxLength: 60 }), (draft) => {
      const kept = strokePoints(draft, 3, 0.2);
      const thing: Thing = {
        key: '',
        path: kept.map(([x, y]) => ({ x, y })),
        closed: false,
        widthMm: 0,
        round: false,
      };
      for (const [x, y] of draft) expect(distanceToThing(thing, { x, y })).toBeLessThan(0.2 + 0.002);
    });
    fc.assert(check, { numRuns: 200 });
  });

  it('are drawn as broad as they print', () => {
    expect(strokeOutline([[5, 5, 1]], 2)).toBe('M4 5a1 1 0 1 1 2 0a1 1 0 1 1 -2 0Z');
    expect(strokeOutline([[5, 5, 0]], 2)).toContain('a0.12 0.12');
  });
});

describe('things over the print', () => {
  const line = (key: string, y: number, more: Partial<Thing> = {}): Thing => ({
    key,
    path: [
      { x: 0, y },
      { x: 10, y },
    ],
    closed: false,
    widthMm: 0,
    round: false,
    ...more,
  });

  it('are found by what they cover, the last made first where both do', () => {
    expect(nearestThing([line('a', 0), line('b', 4)], { x: 5, y: 1.5 }, 2)?.key).toBe('a');
    expect(
      nearestThing([line('a', 0, { widthMm: 6 }), line('b', 4, { widthMm: 6 })], { x: 5, y: 2 }, 1)?.key,
    ).toBe('b');
    expect(nearestThing([line('a', 0)], { x: 5, y: 3 }, 2)).toBeNull();
  });

  it('are near along their closing side and their circle', () => {
    const triangle = {
      ...line('t', 0, { closed: true }),
      path: [
        { x: 0, y: 0 },
        { x: 10, y: 0 },
        { x: 0, y: 10 },
      ],
    };
    expect(distanceToThing(triangle, { x: 0, y: 5 })).toBe(0);
    expect(distanceToThing({ ...triangle, closed: false }, { x: 0, y: 5 })).toBeGreaterThan(3);
    expect(distanceToThing(line('r', 0, { round: true }), { x: 0, y: -10 })).toBe(0);
  });
});

it('every key means one thing', () => {
  const keys = shortcuts.map((shortcut) => shortcut.keys);
  expect(new Set(keys).size).toBe(keys.length);
});
