/** Bits dropped of each channel: colours are counted in cubes of 8 values a side. */
const DROPPED = 3;
/** Cubes along one side, and one on either end so that every cube has all its neighbours. */
const SIDE = (256 >> DROPPED) + 2;
/** A colour that less than this part of the samples has is one of a texture or a shade, and speaks for nothing. */
const LEAST_SHARE = 0.3;

/** Steps from a cube to itself and the 26 about it. */
const AROUND = [-1, 0, 1].flatMap((r) =>
  [-1, 0, 1].flatMap((g) => [-1, 0, 1].map((b) => (r * SIDE + g) * SIDE + b)),
);

/**
 * Finds the colour that most samples have, about, and of those the middle value of each channel: what crosses a flat
 * area, such as a sketch line, does not tint it. Where no colour prevails, the middle of all. Of equals the darker in
 * red, then green, then blue. Colours are 0xrrggbb, at least one.
 */
export function dominantFinder(): (colours: Uint32Array) => number {
  const counts = new Uint32Array(SIDE * SIDE * SIDE);
  const channels = [new Uint32Array(256), new Uint32Array(256), new Uint32Array(256)];

  const middle = (colours: Uint32Array, near: (colour: number) => boolean): number => {
    for (const channel of channels) channel.fill(0);
    let total = 0;
    for (const colour of colours) {
      if (!near(colour)) continue;
      channels[0]![colour >> 16]!++;
      channels[1]![(colour >> 8) & 255]!++;
      channels[2]![colour & 255]!++;
      total++;
    }
    const [r, g, b] = channels.map((channel) => lowerMedian(channel, total));
    return (r! << 16) | (g! << 8) | b!;
  };

  return (colours) => {
    const [first] = colours;
    if (colours.every((colour) => colour === first)) return first!;
    const filled: number[] = [];
    for (const colour of colours) {
      const cube = cubeOf(colour);
      if (counts[cube]!++ === 0) filled.push(cube);
    }
    let [best, most] = [0, 0];
    for (const cube of filled) {
      let many = 0;
      for (const step of AROUND) many += counts[cube + step]!;
      if (many < most || (many === most && cube > best)) continue;
      [best, most] = [cube, many];
    }
    for (const cube of filled) counts[cube] = 0;
    if (most < LEAST_SHARE * colours.length) return middle(colours, () => true);
    const near = new Set(AROUND.map((step) => best + step));
    return middle(colours, (colour) => near.has(cubeOf(colour)));
  };
}

function cubeOf(colour: number): number {
  const r = (colour >> (16 + DROPPED)) + 1;
  const g = ((colour & 0xff00) >> (8 + DROPPED)) + 1;
  const b = ((colour & 0xff) >> DROPPED) + 1;
  return (r * SIDE + g) * SIDE + b;
}

function lowerMedian(counts: Uint32Array, total: number): number {
  let seen = 0;
  let value = -1;
  while (2 * seen < total) seen += counts[++value]!;
  return value;
}
