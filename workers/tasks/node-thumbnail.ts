import { resolveInkLab } from '../../src/ink/ink-lab.ts';
import { screenOf } from '../../src/ink/screen.ts';
import type { Value } from '../engine/values.ts';
import { mapColours } from './map-colours.ts';

/** A small picture: RGBA, sRGB. */
export interface Thumbnail {
  width: number;
  height: number;
  pixels: Uint8ClampedArray<ArrayBuffer>;
}

type Colour = readonly [number, number, number];

/** Longest side, px. */
const SIDE = 80;

/** What an output looks like in small; null for outputs without a look. */
export function nodeThumbnail(value: Value): Thumbnail | null {
  switch (value.type) {
    case 'drawing': {
      const { width, height, data } = value.line;
      return shrunk(width, height, (i) => grey(255 - data[i]!));
    }
    case 'regions': {
      const { width, height, data } = value.labels;
      const colours = mapColours(value.table);
      return shrunk(width, height, (i) => colours[data[i]!]!);
    }
    case 'plates': {
      const planes = value.plates.map(({ coverage }) => coverage.data);
      const { width, height } = value.plates[0]!.coverage;
      return shrunk(width, height, (i) =>
        grey(255 - planes.reduce((sum, plane) => sum + plane[i]!, 0) / planes.length),
      );
    }
    case 'proof': {
      const { width, height, pixels } = value;
      return shrunk(width, height, (i) => [pixels[i * 3]!, pixels[i * 3 + 1]!, pixels[i * 3 + 2]!]);
    }
    case 'inks':
      return stripes(value.plates.map(({ ink }) => colourOf(screenOf(resolveInkLab(ink)).hex)));
    case 'paper':
      return stripes([colourOf(screenOf(value.stock.lab).hex)]);
    default:
      return null;
  }
}

const grey = (value: number): Colour => [value, value, value];

function colourOf(hex: string): Colour {
  const byte = (at: number) => Number.parseInt(hex.slice(at, at + 2), 16);
  return [byte(1), byte(3), byte(5)];
}

/** Box means of a picture, at most SIDE px each way. */
function shrunk(width: number, height: number, colour: (pixel: number) => Colour): Thumbnail {
  const scale = Math.max(1, Math.ceil(Math.max(width, height) / SIDE));
  const small = { width: Math.ceil(width / scale), height: Math.ceil(height / scale) };
  const pixels = new Uint8ClampedArray(small.width * small.height * 4).fill(255);
  for (let y = 0; y < small.height; y++)
    for (let x = 0; x < small.width; x++) {
      const sum = [0, 0, 0];
      let count = 0;
      for (let sy = y * scale; sy < Math.min(height, (y + 1) * scale); sy++)
        for (let sx = x * scale; sx < Math.min(width, (x + 1) * scale); sx++, count++)
          colour(sy * width + sx).forEach((channel, k) => {
            sum[k]! += channel;
          });
      for (let k = 0; k < 3; k++) pixels[(y * small.width + x) * 4 + k] = sum[k]! / count;
    }
  return { ...small, pixels };
}

/** Upright stripes of equal width, as high as wide. */
function stripes(colours: readonly Colour[]): Thumbnail {
  const pixels = new Uint8ClampedArray(SIDE * SIDE * 4).fill(255);
  for (let i = 0; i < SIDE * SIDE; i++)
    pixels.set(colours[Math.floor(((i % SIDE) * colours.length) / SIDE)]!, i * 4);
  return { width: SIDE, height: SIDE, pixels };
}
