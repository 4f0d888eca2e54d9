import { xyzOfLab } from '../../../src/ink/lab.ts';
import { type PrintModel, printModel } from '../../../src/ink/model.ts';
import type { PrintInput } from '../../../src/ink/model-input.ts';
import { screenValuesOf } from '../../../src/ink/screen.ts';
import type { Tools } from '../../engine/evaluation.ts';
import { openRaster, type RasterLayer } from '../../files/open-raster.ts';
import type { Plane, SharedBytes } from '../../kernels/plane.ts';
import { ENCODING, LIGHT } from '../screen-light.ts';

type Rgb = readonly [number, number, number];

const THUMBNAIL_PX = 256;
/**
 * The plates as an OpenRaster picture: the paper's colour below, then one layer a plate in its ink's colour that
 * multiplies what lies beneath; a solid on the bare paper shows as it is predicted to print.
 */
export async function layerFile(
  planes: readonly Plane[],
  names: readonly string[],
  print: PrintInput,
  ppi: number,
  tools: Tools,
): Promise<Uint8Array> {
  const { width, height } = planes[0]!;
  const { paper, inks } = screenInks(printModel(print), planes.length);
  const flat = tools.bytes(width * height * 3);
  await tools.bands(
    'multiplyLayers',
    { planes, inks: inks.map(() => [255, 255, 255] as const), paper, to: flat },
    height,
  );
  const layers: RasterLayer[] = [
    { name: 'Paper', png: await png(flat, 3, width, height, ppi, tools), multiplies: false },
  ];
  for (const [i, plane] of planes.entries()) {
    const data = tools.bytes(width * height * 4);
    await tools.bands('inkLayer', { plane, ink: inks[i]!, to: data }, height);
    layers.push({ name: names[i]!, png: await png(data, 4, width, height, ppi, tools), multiplies: true });
    tools.free(data);
  }
  await tools.bands('multiplyLayers', { planes, inks, paper, to: flat }, height);
  const merged = await png(flat, 3, width, height, ppi, tools);
  const thumbnail = await small(flat, width, height, ppi, tools);
  tools.free(flat);
  return openRaster({ width, height, ppi, layers, merged, thumbnail });
}

/** Colours on a screen that, multiplied with the paper, show each solid as it prints. */
function screenInks(model: PrintModel, count: number): { paper: Rgb; inks: Rgb[] } {
  const byte = (value: number) => Math.min(255, Math.max(0, Math.round(value)));
  const rgbOf = (tints: readonly number[]) =>
    screenValuesOf(xyzOfLab(model.labOf(tints))).map(byte) as unknown as Rgb;
  const paper = rgbOf(Array(count).fill(0));
  const inks = Array.from({ length: count }, (_, at) => {
    const solid = rgbOf(Array.from({ length: count }, (_, i) => (i === at ? 1 : 0)));
    return solid.map((value, band) => byte((value * 255) / Math.max(1, paper[band]!))) as unknown as Rgb;
  });
  return { paper, inks };
}

function png(data: SharedBytes, bands: 3 | 4, width: number, height: number, ppi: number, tools: Tools) {
  return tools.whole('encodePng', { width, height, bands, data, ppi, srgb: true });
}

async function small(from: SharedBytes, width: number, height: number, ppi: number, tools: Tools) {
  const scale = Math.min(1, THUMBNAIL_PX / Math.max(width, height));
  const [toWidth, toHeight] = [width, height].map((px) => Math.max(1, Math.round(px * scale))) as [
    number,
    number,
  ];
  const to = tools.bytes(toWidth * toHeight * 3);
  const shrink = {
    from,
    width,
    height,
    to,
    toWidth,
    toHeight,
    light: LIGHT,
    encoding: ENCODING,
    ground: null,
  };
  await tools.bands('shrinkProof', shrink, toHeight);
  const made = await png(to, 3, toWidth, toHeight, ppi * scale, tools);
  tools.free(to);
  return made;
}
