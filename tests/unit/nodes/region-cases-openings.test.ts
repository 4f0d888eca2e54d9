import { describe, expect, it } from 'vitest';
import type { RegionsValue } from '../../../workers/engine/values.ts';
import { localRegions } from '../support/local-regions.ts';
import { circle, MM, opened, type Place, PPI, stroked } from '../support/shapes.ts';

const ANGLES = [0, 37, 90, 201, 315];
const ROUNDS = [
  { radius: 3, stroke: 1 / MM },
  { radius: 3, stroke: 0.35 },
  { radius: 6, stroke: 0.2 },
  { radius: 10, stroke: 0.5 },
];
const CASES = ROUNDS.flatMap((round) => ANGLES.map((degrees) => ({ ...round, degrees })));

/** Wider than any opening that is named: the way between circle and frame is none, mm. */
const MARGIN = 6;

/** A circle with an opening in it, the middle of the opening, and the circle's own. */
function openCircle({ radius, stroke, degrees }: (typeof CASES)[number], opening: number) {
  const middle: Place = [radius + MARGIN, radius + MARGIN];
  const turn = (degrees * Math.PI) / 180;
  const ring = opened(circle(middle, radius), middle, turn, opening, stroke);
  // the middle of the straight way across, a little nearer than the arc that is missing
  const away = Math.sqrt(radius ** 2 - (opening / 2) ** 2);
  const place: Place = [middle[0] + away * Math.cos(turn), middle[1] + away * Math.sin(turn)];
  return { line: stroked(2 * middle[0], 2 * middle[1], stroke, ring), place, middle };
}

function labelAt({ labels }: RegionsValue, [x, y]: Place): number {
  return labels.data[Math.floor(y * MM) * labels.width + Math.floor(x * MM)]!;
}

/** Right to a pixel: width, and place across and along the opening. */
function expectAt(
  found: { widthMm: number; placeMm: readonly [number, number] } | undefined,
  place: Place,
  opening: number,
  stroke: number,
): void {
  const [dx, dy] = [found!.placeMm[0] - place[0], found!.placeMm[1] - place[1]];
  expect(Math.abs(found!.widthMm - opening) * MM).toBeLessThanOrEqual(1);
  // anywhere along the way through the line is the place of its opening
  expect(Math.hypot(dx, dy) * MM).toBeLessThanOrEqual((stroke / 2) * MM + 1);
}

describe.each(CASES)('a circle of $radius mm, $stroke mm of line, opened at $degrees degrees', (shape) => {
  it('by 0.3 mm is closed by a gap of 0.5 mm, with a wall where the opening is (case 2)', async () => {
    const { line, place, middle } = openCircle(shape, 0.3);
    const { regions } = await localRegions(line, PPI);
    expect(regions.table).toHaveLength(2);
    expect(labelAt(regions, middle)).not.toBe(labelAt(regions, [0.1, 0.1]));
    expect(regions.walls).toHaveLength(1);
    expectAt(regions.walls[0], place, 0.3, shape.stroke);
    expect(regions.openGaps).toEqual([]);
  });

  it('by 0.3 mm stays open with a gap of 0.2 mm, and is named as open (case 2)', async () => {
    const { line, place } = openCircle(shape, 0.3);
    const { regions } = await localRegions(line, PPI, { gapMm: 0.2 });
    expect(regions.table).toHaveLength(1);
    expect(regions.walls).toEqual([]);
    expect(regions.openGaps).toHaveLength(1);
    expectAt(regions.openGaps[0], place, 0.3, shape.stroke);
  });

  it('by 3 mm is not bridged by a gap of 0.5 mm, and named as open where it parts a room (case 3)', async () => {
    const { line, place } = openCircle(shape, 3);
    const { regions } = await localRegions(line, PPI);
    expect(regions.table).toHaveLength(1);
    expect(regions.walls).toEqual([]);
    expect(regions.openGaps).toHaveLength(1);
    expectAt(regions.openGaps[0], place, 3, shape.stroke);
  });
});
