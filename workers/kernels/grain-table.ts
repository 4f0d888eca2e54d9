/** A grain that keeps means, worked out beforehand: `256 * coverage + level` -> coverage. */
export type GrainTable = Uint8Array<SharedArrayBuffer>;

/** Tints above this share of a solid run into the opened solid. */
const SHOULDER = 0.95;

/** For each coverage 0..255 the mean it prints at where solids are opened by `share` 0..0.15. */
function openedMeans(share: number): Float64Array {
  return Float64Array.from({ length: 256 }, (_, v) => {
    const over = Math.max(0, (v / 255 - SHOULDER) / (1 - SHOULDER));
    return share === 0 ? v : v * (1 - over) + 255 * (1 - share) * over;
  });
}

/**
 * A tint moves up and down by equal chance within the room it has to paper or solid, whichever is nearer.
 *
 * @param shares how often each level stands on the sheet; level 128 is the middle
 * @param strength 0..1 of the room
 */
export function mottleTable(shares: Float64Array, strength: number, openSolids: number): GrainTable {
  let mean = 0;
  for (let u = 0; u < 256; u++) mean += (shares[u]! * (u - 128)) / 127;
  const means = openedMeans(openSolids);
  return tableOf((v, u) => {
    const middle = means[v]!;
    const room = Math.min(middle, 255 - middle) * strength;
    return middle + (room * ((u - 128) / 127 - mean)) / (1 + Math.abs(mean));
  });
}

/**
 * Ink gathers where levels are low: the share of the sheet below a level that fits the tint is inked, with a ramp of
 * `ramp` levels between inked and bare.
 *
 * @param shares how often each level stands on the sheet
 * @param strength 0 flat .. 1 all of that
 */
export function gatherTable(
  shares: Float64Array,
  ramp: number,
  strength: number,
  openSolids: number,
): GrainTable {
  const means = openedMeans(openSolids);
  const middleOf = rampMiddles(shares, ramp);
  const middles = Float64Array.from(means, (mean) => middleOf(mean / 255));
  return tableOf((v, u) => {
    const mean = means[v]!;
    const inked = 255 * Math.min(1, Math.max(0, 0.5 + (middles[v]! - u) / ramp));
    return mean === 0 || mean === 255 ? mean : mean + (inked - mean) * strength;
  });
}

/** The level at which the middle of a ramp must stand for the sheet to hold a share of ink. */
function rampMiddles(shares: Float64Array, ramp: number): (share: number) => number {
  const below = new Float64Array(257);
  const moment = new Float64Array(257);
  for (let u = 0; u < 256; u++) {
    below[u + 1] = below[u]! + shares[u]!;
    moment[u + 1] = moment[u]! + shares[u]! * u;
  }
  const bound = (level: number) => Math.min(256, Math.max(0, Math.ceil(level)));
  const inkedAt = (middle: number) => {
    const full = bound(middle - ramp / 2);
    const none = bound(middle + ramp / 2);
    const partly = (0.5 + middle / ramp) * (below[none]! - below[full]!);
    return below[full]! + partly - (moment[none]! - moment[full]!) / ramp;
  };
  return (share) => {
    let [low, high] = [-ramp, 256 + ramp];
    for (let step = 0; step < 30; step++) {
      const middle = (low + high) / 2;
      if (inkedAt(middle) < share) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };
}

function tableOf(coverage: (v: number, u: number) => number): GrainTable {
  const table = new Uint8Array(new SharedArrayBuffer(65_536));
  for (let v = 0; v < 256; v++)
    for (let u = 0; u < 256; u++) table[v * 256 + u] = Math.min(255, Math.max(0, coverage(v, u))) + 0.5;
  return table;
}
