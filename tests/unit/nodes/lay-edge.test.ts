import { describe, expect, it } from 'vitest';
import { farEdgeMm, registerOffset } from '../../../src/nodes/register-offset.ts';
import { sourcePlace } from '../../../workers/nodes/register-offset.ts';

const EXTENT = { ppi: 254, mm: [297, 420] as const };
const STILL = { alongMm: 0, acrossMm: 0, rotationDeg: 0, stretchMm: 0 };

/** Where on the plate a place of the sheet comes from, mm. */
function source(
  feedEdge: 'top' | 'right' | 'bottom' | 'left',
  deg: number,
  [x, y]: readonly [number, number],
) {
  const place = sourcePlace({ ...STILL, rotationDeg: deg }, { feedEdge, turnsAbout: 'lay-edge' }, EXTENT);
  const [px, py] = [x * 10 - 0.5, y * 10 - 0.5];
  return [
    (place.xx * px + place.xy * py + place.x0 + 0.5) / 10,
    (place.yx * px + place.yy * py + place.y0 + 0.5) / 10,
  ] as const;
}

describe('a plate that turns about the lay edge', () => {
  it.each([
    ['top', [148.5, 0], [148.5, 420], 0],
    ['bottom', [148.5, 420], [148.5, 0], 0],
    ['left', [0, 210], [297, 210], 1],
    ['right', [297, 210], [0, 210], 1],
  ] as const)('stands still there and swings at the far edge: %s', (feedEdge, lay, far, across) => {
    const still = source(feedEdge, 0.37, lay);
    expect(still[0]).toBeCloseTo(lay[0], 6);
    expect(still[1]).toBeCloseTo(lay[1], 6);
    const feedMm = across === 0 ? 420 : 297;
    const swing = Math.abs(source(feedEdge, 0.37, far)[across] - far[across]);
    expect(swing).toBeCloseTo(farEdgeMm(0.37, feedMm), 6);
  });

  it('swings by 0.073 mm over 420 mm for a hundredth of a degree', () => {
    expect(farEdgeMm(0.01, 420)).toBeCloseTo(0.0733, 4);
    expect(farEdgeMm(-0.01, 420)).toBeCloseTo(-0.0733, 4);
  });

  it('is not what a job from before the setting gets', () => {
    expect(registerOffset.settings.parse({}).turnsAbout).toBe('middle');
  });
});
