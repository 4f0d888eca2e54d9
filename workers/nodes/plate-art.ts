import { BadInput } from '../../src/graph/complaint.ts';
import { plateArt as kind } from '../../src/nodes/plate-art.ts';
import { evaluation } from '../engine/evaluation.ts';
import { PLAIN } from '../kernels/coverage.ts';
import type { Affine } from '../kernels/offset.ts';
import { mmToPx } from '../kernels/plane.ts';
import { sineAndCosine } from '../kernels/turn.ts';
import { keptWithin } from './kept-within.ts';
import { openAsset } from './open-picture.ts';

const VECTOR_PPI = 600;

export const plateArt = evaluation(kind, async ({ settings, inputs, tools }) => {
  const { plates, area } = inputs;
  if (!settings.asset) throw new BadInput('Plate art has no picture yet; choose one, or bypass it');
  const wanted = settings.plate === '' ? plates.plates.at(-1)!.id : settings.plate;
  const plate = plates.plates.find(({ id }) => id === wanted);
  if (!plate)
    throw new BadInput(
      `Plate art lies on the plate "${wanted}", which is not there; there are ${plates.plates.map(({ id }) => id).join(', ')}`,
    );
  const options = { vectorPpi: VECTOR_PPI, widthMm: settings.widthMm || plates.mm[0] };
  const { head, pixels } = await openAsset(settings.asset, options, tools);
  const art = tools.plane(head.width, head.height);
  await tools.bands('coverage', { pixels, bands: head.bands, reading: PLAIN, line: art }, head.height);
  tools.free(pixels);
  const { width, height } = plate.coverage;
  const wide = mmToPx(settings.widthMm || plates.mm[0], plates.ppi);
  const place = placeOf(
    art,
    wide,
    mmToPx(settings.xMm, plates.ppi),
    mmToPx(settings.yMm, plates.ppi),
    settings.turnDeg,
  );
  const out = tools.plane(width, height);
  const strength = Math.round((settings.strengthPercent * 255) / 100);
  await tools.bands(
    'layArt',
    { plate: plate.coverage, art, place, strength, does: settings.does, out },
    height,
  );
  const kept = area ? await keptWithin(plate.coverage, out, area.mask, tools) : out;
  return {
    plates: {
      ...plates,
      plates: plates.plates.map((each) => (each === plate ? { ...each, coverage: kept } : each)),
    },
  };
});

/** Where a pixel of the plate lies on a picture that is `wide` px wide there, its corner at x, y, turned. */
function placeOf(
  art: { width: number; height: number },
  wide: number,
  x: number,
  y: number,
  turn: number,
): Affine {
  const scale = art.width / wide;
  const high = art.height / scale;
  const [sine, cosine] = sineAndCosine(turn);
  const [midX, midY] = [x + wide / 2 - 0.5, y + high / 2 - 0.5];
  const xx = scale * cosine;
  const xy = scale * sine;
  const yx = -scale * sine;
  const yy = scale * cosine;
  return {
    xx,
    xy,
    x0: (art.width - 1) / 2 - xx * midX - xy * midY,
    yx,
    yy,
    y0: (art.height - 1) / 2 - yx * midX - yy * midY,
  };
}
