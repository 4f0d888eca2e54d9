import { strToU8, zipSync } from 'fflate';

/** One layer: a PNG of the whole picture. */
export interface RasterLayer {
  name: string;
  png: Uint8Array;
  /** Multiplies what lies beneath instead of covering it. */
  multiplies: boolean;
}

/** The earliest date a ZIP can hold: equal layers make equal files. */
const NO_DATE = new Date(1980, 0, 1);

/**
 * An OpenRaster picture (Open Raster specification 0.0.6), for going on in a painting program.
 *
 * @param picture.layers from the lowest up
 * @param picture.merged all layers seen together, as PNG
 * @param picture.thumbnail the same, at most 256 pixels a side
 */
export function openRaster(picture: {
  width: number;
  height: number;
  ppi: number;
  layers: readonly RasterLayer[];
  merged: Uint8Array;
  thumbnail: Uint8Array;
}): Uint8Array<ArrayBuffer> {
  const { width, height, ppi, layers, merged, thumbnail } = picture;
  const ppiWhole = Math.round(ppi);
  const rows = layers
    .map(({ name, multiplies }, i) => {
      const op = multiplies ? 'svg:multiply' : 'svg:src-over';
      return `<layer name="${escaped(name)}" src="data/layer${i}.png" x="0" y="0" opacity="1.0" visibility="visible" composite-op="${op}"/>`;
    })
    .reverse()
    .join('\n');
  const stack = `<?xml version="1.0" encoding="UTF-8"?>
<image version="0.0.6" w="${width}" h="${height}" xres="${ppiWhole}" yres="${ppiWhole}">
<stack>
${rows}
</stack>
</image>
`;
  const pngs = Object.fromEntries(layers.map(({ png }, i) => [`data/layer${i}.png`, png]));
  const entries = {
    mimetype: strToU8('image/openraster'),
    'stack.xml': strToU8(stack),
    ...pngs,
    'mergedimage.png': merged,
    'Thumbnails/thumbnail.png': thumbnail,
  };
  return zipSync(entries, { level: 0, mtime: NO_DATE });
}

function escaped(text: string): string {
  return text.replace(
    /[&<>"]/g,
    (mark) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[mark]!,
  );
}
