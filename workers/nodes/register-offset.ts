import type { SettingsOf } from '../../src/graph/node-kind.ts';
import { ALONG_FEED, registerOffset as kind } from '../../src/nodes/register-offset.ts';
import { evaluation } from '../engine/evaluation.ts';
import type { PlatesValue, PlateValue } from '../engine/values.ts';
import { mix, seedOfSheet } from '../kernels/lattice.ts';
import type { Affine } from '../kernels/offset.ts';
import { pxToMm } from '../kernels/plane.ts';
import { sineAndCosine } from '../kernels/turn.ts';

type Settings = SettingsOf<typeof kind>;

interface Shift {
  alongMm: number;
  acrossMm: number;
  rotationDeg: number;
  stretchMm: number;
}

const STILL: Shift = { alongMm: 0, acrossMm: 0, rotationDeg: 0, stretchMm: 0 };

export const registerOffset = evaluation(kind, async ({ settings, inputs, tools }) => {
  const { plates } = inputs;
  const moved = plates.plates.map(async (plate) => {
    const shift = shiftOf(plate, settings);
    if (Object.values(shift).every((value) => value === 0)) return plate;
    const out = tools.plane(plate.coverage.width, plate.coverage.height);
    const place = sourcePlace(shift, settings, plates);
    await tools.bands('offset', { plate: plate.coverage, out, place }, out.height);
    return { ...plate, coverage: out };
  });
  return { plates: { ...plates, plates: await Promise.all(moved) } };
});

/** Where a plate stands on this sheet. */
export function shiftOf({ id, order }: Pick<PlateValue, 'id' | 'order'>, settings: Settings): Shift {
  const fixed = settings.how === 'by-chance' ? STILL : (settings.offsets[id] ?? STILL);
  if (settings.how === 'fixed') return fixed;
  const chance = byChance(order, settings);
  return {
    alongMm: fixed.alongMm + chance.alongMm,
    acrossMm: fixed.acrossMm + chance.acrossMm,
    rotationDeg: fixed.rotationDeg + chance.rotationDeg,
    stretchMm: fixed.stretchMm,
  };
}

/** The first plate is what the others are registered to; each other one is drawn within the tolerance, evenly. */
function byChance(order: number, settings: Settings): Shift {
  if (order === 1) return STILL;
  const seed = seedOfSheet(settings.seed, settings.sheet);
  const draw = (n: number) => (mix(order * 8 + n, seed) / 0xffffffff) * 2 - 1;
  return {
    alongMm: draw(0) * settings.toleranceAlongMm,
    acrossMm: draw(1) * settings.toleranceAcrossMm,
    rotationDeg: draw(2) * settings.toleranceDeg,
    stretchMm: 0,
  };
}

/**
 * Where each printed pixel comes from on the plate. Forward, a point is stretched away from the feed edge, turned
 * clockwise about the middle of the sheet or of its feed edge, and shifted; this is the inverse, from pixel centre to pixel centre.
 */
export function sourcePlace(
  shift: Shift,
  { feedEdge, turnsAbout }: Pick<Settings, 'feedEdge' | 'turnsAbout'>,
  { mm: [widthMm, heightMm], ppi }: Pick<PlatesValue, 'mm' | 'ppi'>,
): Affine {
  const [ax, ay] = ALONG_FEED[feedEdge];
  const feedMm = ax === 0 ? heightMm : widthMm;
  const grow = 1 + shift.stretchMm / feedMm;
  const [sin, cos] = sineAndCosine(shift.rotationDeg);
  const tx = shift.alongMm * ax + shift.acrossMm * Math.abs(ay);
  const ty = shift.alongMm * ay + shift.acrossMm * Math.abs(ax);
  const px = pxToMm(1, ppi);
  const sx = ax === 0 ? 1 : 1 / grow;
  const sy = ay === 0 ? 1 : 1 / grow;
  const lay = turnsAbout === 'lay-edge' ? feedMm / 2 : 0;
  const middle = [widthMm / 2 - ax * lay, heightMm / 2 - ay * lay] as const;
  const fixed = [ax < 0 ? widthMm : 0, ay < 0 ? heightMm : 0] as const;
  const place = (x: number, y: number): [number, number] => {
    const dx = (x + 0.5) * px - tx - middle[0];
    const dy = (y + 0.5) * px - ty - middle[1];
    const ux = cos * dx + sin * dy + middle[0];
    const uy = cos * dy - sin * dx + middle[1];
    return [(fixed[0] + (ux - fixed[0]) * sx) / px - 0.5, (fixed[1] + (uy - fixed[1]) * sy) / px - 0.5];
  };
  const [x0, y0] = place(0, 0);
  return { xx: cos * sx, xy: sin * sx, x0, yx: -sin * sy, yy: cos * sy, y0 };
}
