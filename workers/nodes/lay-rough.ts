import type { SettingsOf } from '../../src/graph/node-kind.ts';
import type { matchRough } from '../../src/nodes/match-rough.ts';
import type { Tools } from '../engine/evaluation.ts';
import type { RegionsValue, RoughLaid } from '../engine/values.ts';
import type { Affine } from '../kernels/offset.ts';
import { type Fit, roughPlace, sameShape } from '../kernels/rough-place.ts';
import type { RoughPicture } from '../kernels/shrink-rough.ts';

type Settings = Pick<
  SettingsOf<typeof matchRough>,
  'fit' | 'scalePercent' | 'shiftXMm' | 'shiftYMm' | 'turnDeg'
>;

const UNMOVED: RoughLaid = { scalePercent: 100, shiftMm: [0, 0], turnDeg: 0 };
/**
 * With more than this (see `fitRough`) a rough follows the drawing's regions nowhere. On 24 pictures: roughs of the
 * drawing, also blurred, noisy, textured or bent, stayed below 0.2, scattered or bent by 2.5 % of the sheet below 0.45;
 * other pictures came out above that, most of them above 0.8.
 */
const MOST_SHARPNESS = 0.45;

/** How a rough is laid on a drawing, and where the drawing's pixels so come to lie on it. */
export async function layRough(
  settings: Settings,
  regions: RegionsValue,
  rough: RoughPicture,
  name: string,
  tools: Tools,
): Promise<{ laid: RoughLaid; place: Affine }> {
  const { width, height } = regions.labels;
  const alike = sameShape({ width, height }, rough);
  const laid = await howLaid(settings, regions, rough, alike, name, tools);
  const stretched = alike || settings.fit === 'frame';
  if (!alike)
    tools.complain({
      code: 'rough-shape',
      severity: 'note',
      message: `${name}: the rough has another shape (${shapeOf(rough)}) than the drawing (${shapeOf(regions.labels)}); it was ${stretched ? 'stretched over it' : 'laid over it at one scale'}. Check where it lies.`,
    });
  return { laid, place: roughPlace({ width, height }, rough, fitOf(laid, regions.mm), stretched) };
}

async function howLaid(
  settings: Settings,
  regions: RegionsValue,
  rough: RoughPicture,
  alike: boolean,
  name: string,
  tools: Tools,
): Promise<RoughLaid> {
  const { fit, scalePercent, shiftXMm, shiftYMm, turnDeg } = settings;
  if (fit === 'set') return { scalePercent, shiftMm: [shiftXMm, shiftYMm], turnDeg };
  if (fit === 'frame') return UNMOVED;
  const { width, height, data } = regions.labels;
  const found = await tools.whole('fitRough', { labels: data, width, height, rough, alike });
  if (!found) return UNMOVED;
  if (found.sharpness <= MOST_SHARPNESS) return laidAt(found.fit, regions.mm);
  tools.complain({
    code: 'rough-unfit',
    severity: 'warning',
    message: `${name}: its colours follow the drawing's regions nowhere, so it is laid on without being moved; check that it is the rough of this drawing, or set the fit by hand.`,
  });
  return UNMOVED;
}

/** A fit in numbers one could type: the result is the same when they are. */
function laidAt({ scale, shiftX, shiftY, turn }: Fit, mm: readonly [number, number]): RoughLaid {
  const long = Math.max(...mm);
  return {
    scalePercent: hundredths(scale * 100),
    shiftMm: [hundredths(shiftX * long), hundredths(shiftY * long)],
    turnDeg: hundredths(turn),
  };
}

function fitOf({ scalePercent, shiftMm, turnDeg }: RoughLaid, mm: readonly [number, number]): Fit {
  const long = Math.max(...mm);
  return { scale: scalePercent / 100, shiftX: shiftMm[0] / long, shiftY: shiftMm[1] / long, turn: turnDeg };
}

function hundredths(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}

function shapeOf({ width, height }: { width: number; height: number }): string {
  return width >= height ? `${hundredths(width / height)} to 1` : `1 to ${hundredths(height / width)}`;
}
