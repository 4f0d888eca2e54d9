import { xyzOfLab } from '../../src/ink/lab.ts';
import { linearOfXyz } from '../../src/ink/srgb.ts';
import type { Tools } from '../engine/evaluation.ts';
import type { PaperValue, PlatesValue } from '../engine/values.ts';
import { latticeOf, octavesOf } from '../kernels/lattice.ts';
import { type Plane, pxToMm, type SharedBytes } from '../kernels/plane.ts';

/** Light of the bare sheet under plates, bytes around 128. */
export async function textureOf(paper: PaperValue, plates: PlatesValue, tools: Tools): Promise<Plane> {
  const { width, height } = plates.plates[0]!.coverage;
  const texture = tools.plane(width, height);
  if (paper.scan) await layScan(paper.scan, plates.ppi, texture, tools);
  else {
    const sheet = { lattice: latticeOf(paper.look.seed), pixelMm: pxToMm(1, plates.ppi), look: paper.look };
    await tools.bands('paperTexture', { out: texture, ...sheet }, height);
  }
  return texture;
}

/** A finer scan than the print is brought down by whole steps first, so that it cannot alias. */
async function layScan(
  { tile, ppi, strength }: NonNullable<PaperValue['scan']>,
  sheetPpi: number,
  out: Plane,
  tools: Tools,
): Promise<void> {
  let scale = 1;
  while (scale < 16 && ppi / sheetPpi >= scale * 1.5) scale *= 2;
  const small = scale === 1 ? tile : tools.plane(tile.width / scale, tile.height / scale);
  if (scale > 1) await tools.bands('reduceCoverage', { from: tile, to: small, scale }, small.height);
  const step = ppi / sheetPpi / scale;
  await tools.bands('scanTexture', { tile: small, step, strength, out }, out.height);
}

/** The plates as their ink lies on the tooth of the sheet. */
export function onTooth(
  { inkOnTooth }: PaperValue,
  { plates }: PlatesValue,
  texture: Plane,
  tools: Tools,
): Promise<Plane[]> {
  const thinned = plates.map(async ({ coverage: plate }) => {
    if (inkOnTooth === 0) return plate;
    const out = tools.plane(plate.width, plate.height);
    await tools.bands('inkOnTooth', { plate, texture, take: inkOnTooth, out }, plate.height);
    return out;
  });
  return Promise.all(thinned);
}

/** Light of screen bytes, and screen bytes of light in equal steps. */
interface ScreenTables {
  light: Float64Array;
  encoding: Uint8Array;
}

/** The print with the back of its sheet seen through it. */
export async function shownThrough(
  { showThrough: { share, picture }, stock }: PaperValue,
  { width, height }: Plane,
  pixels: SharedBytes,
  tables: ScreenTables,
  tools: Tools,
): Promise<SharedBytes> {
  if (share === 0) return pixels;
  const bare = picture ? [1, 1, 1] : linearOfXyz(xyzOfLab(stock.lab));
  const back = picture ?? { data: pixels, width, height, bands: 3 };
  const out = tools.bytes(pixels.length);
  await tools.bands(
    'showThrough',
    { front: pixels, width, height, back, bare, share, ...tables, out },
    height,
  );
  tools.free(pixels);
  return out;
}

/** A light table under a torn sheet. */
const GROUND = [232, 230, 226] as const;

/** The print with the torn edge of its sheet. */
export async function torn(
  { deckleMm, look }: PaperValue,
  { width, height }: Plane,
  ppi: number,
  pixels: SharedBytes,
  tools: Tools,
): Promise<SharedBytes> {
  if (deckleMm === 0) return pixels;
  const pixelMm = pxToMm(1, ppi);
  const lattice = latticeOf(look.seed);
  const octaves = octavesOf(2 * deckleMm + 2, 4, look.seed, pixelMm);
  const out = tools.bytes(pixels.length);
  const edge = { width, height, pixelMm, deckleMm, lattice, octaves, ground: GROUND };
  await tools.bands('deckle', { pixels, out, ...edge }, height);
  tools.free(pixels);
  return out;
}
