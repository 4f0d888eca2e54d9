import type { Plane, SharedBytes } from './plane.ts';

/** Colour of an ink on a screen, 0..255 each. */
type Rgb = readonly [number, number, number];

export interface InkLayerArgs {
  plane: Plane;
  ink: Rgb;
  /** `width * height * 4` bytes, RGBA with straight alpha. */
  to: SharedBytes;
}

/** A plate as a layer in its ink's colour, as opaque as it covers; rows `from..to`. */
export function inkLayer(args: InkLayerArgs, from: number, to: number): void {
  const { ink, to: out } = args;
  const { width, data } = args.plane;
  for (let i = from * width; i < to * width; i++) {
    out[i * 4] = ink[0];
    out[i * 4 + 1] = ink[1];
    out[i * 4 + 2] = ink[2];
    out[i * 4 + 3] = data[i]!;
  }
}

export interface MultiplyLayersArgs {
  planes: readonly Plane[];
  /** One for each plane. */
  inks: readonly Rgb[];
  paper: Rgb;
  /** `width * height * 3` bytes, RGB. */
  to: SharedBytes;
}

/** Paper and ink layers multiplied in their encoded values, as OpenRaster's svg:multiply shows them; rows `from..to`. */
export function multiplyLayers(args: MultiplyLayersArgs, from: number, to: number): void {
  const { planes, inks, paper, to: out } = args;
  const width = planes[0]!.width;
  for (let i = from * width; i < to * width; i++) {
    for (let band = 0; band < 3; band++) {
      let value = paper[band]!;
      for (let k = 0; k < planes.length; k++) {
        const covered = planes[k]!.data[i]! / 255;
        value *= 1 - covered * (1 - inks[k]![band]! / 255);
      }
      out[i * 3 + band] = Math.round(value);
    }
  }
}
