import type { Complain } from './bad-file.ts';
import { svgAtSize } from './heads/svg.ts';
import { abandonResvg, loadResvg } from './resvg.ts';

/**
 * Draws an SVG into `target`: `width * height` RGBA pixels, straight alpha, paper left transparent.
 * @throws BadFile for broken markup and for drawings too heavy for the memory limit
 */
export async function drawSvg(
  bytes: Uint8Array,
  width: number,
  height: number,
  target: Uint8Array,
  complain: Complain,
): Promise<void> {
  const text = svgAtSize(bytes, width, height, complain);
  const Resvg = await loadResvg(width * height);
  let tree: InstanceType<typeof Resvg> | undefined;
  try {
    tree = new Resvg(text, { font: { loadSystemFonts: false } });
    const image = tree.render();
    if (image.width !== width || image.height !== height) throw new Error('drawn at another size');
    unmultiply(image.pixels, target);
    image.free();
    tree.free();
  } catch (error) {
    if (error instanceof WebAssembly.RuntimeError) {
      abandonResvg(width * height, tree);
      throw complain(`the SVG is too heavy to draw at ${width} x ${height} px; simplify it or lower the ppi`);
    }
    throw complain(`the SVG is broken (${reason(error)}); save it again`);
  }
}

function reason(error: unknown): string {
  return String(error)
    .replace(/^.*failed cause /, '')
    .replace(/\s+/g, ' ')
    .slice(0, 120);
}

/** RGBA with straight alpha from RGBA with alpha multiplied into the colours. */
function unmultiply(pixels: Uint8Array, target: Uint8Array): void {
  target.set(pixels);
  for (let i = 0; i < pixels.length; i += 4) {
    const alpha = pixels[i + 3]!;
    if (alpha === 0 || alpha === 255) continue;
    const half = alpha >> 1;
    target[i] = (pixels[i]! * 255 + half) / alpha;
    target[i + 1] = (pixels[i + 1]! * 255 + half) / alpha;
    target[i + 2] = (pixels[i + 2]! * 255 + half) / alpha;
  }
}
