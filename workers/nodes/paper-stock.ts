import { BadInput } from '../../src/graph/complaint.ts';
import type { SettingsOf } from '../../src/graph/node-kind.ts';
import { paperStock as kind } from '../../src/nodes/paper-stock.ts';
import { evaluation, type Tools } from '../engine/evaluation.ts';
import type { BackPicture, PaperValue } from '../engine/values.ts';
import type { PaperLook } from '../kernels/paper-texture.ts';
import { mmToPx } from '../kernels/plane.ts';
import { sineAndCosine } from '../kernels/turn.ts';
import { openAsset } from './open-picture.ts';
import { TEXTURE_DEPTH } from './texture-depth.ts';

type Settings = SettingsOf<typeof kind>;

export const paperStock = evaluation(kind, async ({ settings, tools }) => ({
  paper: {
    type: 'paper',
    stock: { lab: settings.lab, surface: settings.surface },
    look: lookOf(settings),
    scan: settings.asset === null ? null : await scanOf(settings.asset, settings, tools),
    inkOnTooth: settings.inkOnToothPercent / 100,
    deckleMm: settings.deckleMm,
    showThrough: {
      share: settings.showThroughPercent / 100,
      picture: settings.showThroughPercent > 0 ? await backOf(settings.backAsset, tools) : null,
    },
  },
}));

function lookOf(settings: Settings): PaperLook {
  return {
    tooth: settings.toothPercent / 100,
    toothMm: settings.toothMm,
    fibres: settings.fibresPercent / 100,
    fibresAlong: directionOf(settings.fibresDeg),
    fibresSpread: settings.fibresSpreadDeg / 90,
    flecks: settings.flecksPerDm2 === 0 ? 0 : settings.flecksPercent / 100,
    flecksPerDm2: settings.flecksPerDm2,
    flecksMm: settings.flecksMm,
    laid: settings.mould === 'laid' ? settings.laidPercent / 100 : 0,
    laidMm: settings.laidMm,
    seed: settings.seed,
  };
}

/** Unit vector at -90..90 degrees, by way of half the angle. */
function directionOf(deg: number): [number, number] {
  const [sine, cosine] = sineAndCosine(deg / 2);
  return [cosine * cosine - sine * sine, 2 * sine * cosine];
}

/** A drawing without pixels of its own is drawn out so wide where it says no size. */
const BACK_PPI = 300;

async function backOf(asset: string | null, tools: Tools): Promise<BackPicture | null> {
  if (asset === null) return null;
  const { head, pixels } = await openAsset(asset, { vectorPpi: BACK_PPI }, tools);
  return { data: pixels, width: head.width, height: head.height, bands: head.bands };
}

/** Light is evened over this much: far broader than tooth and fibres. */
const EVEN_MM = 6;
/** A larger scan holds nothing new, and a sheet of it takes long to even. */
const MOST_PIXELS = 30e6;

async function scanOf(asset: string, settings: Settings, tools: Tools): Promise<PaperValue['scan']> {
  const ppi = settings.scanPpi;
  const { name, head, pixels } = await openAsset(asset, { vectorPpi: ppi }, tools);
  const { width, height, bands } = head;
  if (width * height > MOST_PIXELS)
    throw new BadInput(`${name}: ${width} x ${height} px is more paper than is needed; crop the scan`);
  const reach = Math.max(2, Math.round(mmToPx(EVEN_MM, ppi)));
  const swing = 128 / TEXTURE_DEPTH;
  const tile = await tools.whole('evenScan', { pixels, width, height, bands, reach, swing, name });
  tools.adopt(tile.data.buffer);
  tools.free(pixels);
  return { tile, ppi, strength: settings.scanPercent / 100 };
}
