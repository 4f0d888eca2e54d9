/** A disc on a picture, px from its upper left corner. */
export interface Spot {
  x: number;
  y: number;
  radius: number;
}

export interface SampleSpotsArgs {
  /** `width * height * bands` bytes. */
  pixels: Uint8Array;
  width: number;
  height: number;
  /** 1 grey, 2 grey and alpha, 3 RGB, 4 RGB and alpha. */
  bands: number;
  spots: readonly Spot[];
}

/** The middle red, green and blue of each disc, 0..255; null where a disc holds no opaque pixel. */
export function sampleSpots(args: SampleSpotsArgs): ([number, number, number] | null)[] {
  return args.spots.map((spot) => middleOf(args, spot));
}

const OPAQUE = 128;

function middleOf(args: SampleSpotsArgs, { x, y, radius }: Spot): [number, number, number] | null {
  const { pixels, width, height, bands } = args;
  const colour = bands >= 3 ? 3 : 1;
  const counts = [new Uint32Array(256), new Uint32Array(256), new Uint32Array(256)] as const;
  let total = 0;
  const [top, bottom] = span(y, radius, height);
  const [left, right] = span(x, radius, width);
  for (let row = top; row <= bottom; row++)
    for (let column = left; column <= right; column++) {
      const [dx, dy] = [column + 0.5 - x, row + 0.5 - y];
      const at = (row * width + column) * bands;
      if (dx * dx + dy * dy > radius * radius) continue;
      if (bands > colour && pixels[at + colour]! < OPAQUE) continue;
      for (let band = 0; band < 3; band++) counts[band]![pixels[at + (colour === 3 ? band : 0)]!]!++;
      total++;
    }
  if (total === 0) return null;
  return [middle(counts[0], total), middle(counts[1], total), middle(counts[2], total)];
}

function span(centre: number, radius: number, size: number): [number, number] {
  return [Math.max(0, Math.floor(centre - radius)), Math.min(size - 1, Math.ceil(centre + radius))];
}

/** The lower median of a histogram. */
function middle(counts: Uint32Array, total: number): number {
  let seen = 0;
  for (let value = 0; value < 256; value++) {
    seen += counts[value]!;
    if (2 * seen >= total) return value;
  }
  return 255;
}
