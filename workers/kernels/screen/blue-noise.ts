import { exp } from '../../../src/ink/arithmetic.ts';
import { mix } from '../lattice.ts';

/** Spread of the Gaussian that tells crowded from empty, px. */
const SIGMA = 1.5;
const REACH = 8;
/** Weights are whole numbers, so that what was added can be taken away without a trace. */
const UNIT = 2 ** 20;
/** Share of dots that the first pattern has. */
const FIRST = 0.1;

const SPAN = 2 * REACH + 1;
const WEIGHTS = Int32Array.from({ length: SPAN * SPAN }, (_, i) => {
  const [dx, dy] = [(i % SPAN) - REACH, Math.floor(i / SPAN) - REACH];
  return Math.round(UNIT * exp(-(dx * dx + dy * dy) / (2 * SIGMA * SIGMA)));
});

/**
 * Thresholds of a square tile whose dots lie as far apart as they can at every tint, 0..65534: the void-and-cluster
 * method. The same side gives the same tile always; it joins itself at its sides.
 *
 * Source: R. Ulichney, The void-and-cluster method for dither array generation, Proc. SPIE 1913 (1993).
 *
 * @param side a power of two, at least 32
 */
export function blueNoise(side: number): Uint16Array<SharedArrayBuffer> {
  const count = side * side;
  const pattern = new Pattern(side);
  const first = [...new Array(count).keys()]
    .sort((a, b) => mix(a, side) - mix(b, side) || a - b)
    .slice(0, Math.round(FIRST * count));
  for (const place of first) pattern.set(place, 1);
  for (;;) {
    const crowded = pattern.mostCrowded();
    pattern.set(crowded, 0);
    const empty = pattern.emptiest();
    pattern.set(empty, 1);
    if (empty === crowded) break;
  }
  const rank = new Float64Array(count);
  const prototype = pattern.copy();
  for (let left = first.length - 1; left >= 0; left--) {
    const place = pattern.mostCrowded();
    pattern.set(place, 0);
    rank[place] = left;
  }
  for (let next = first.length; next < count; next++) {
    const place = prototype.emptiest();
    prototype.set(place, 1);
    rank[place] = next;
  }
  const tile = new Uint16Array(new SharedArrayBuffer(count * 2));
  for (let i = 0; i < count; i++) tile[i] = Math.floor(((rank[i]! + 0.5) / count) * 65535);
  return tile;
}

/** Dots on a torus, how crowded every place is, and for each row its most crowded dot and its emptiest place. */
class Pattern {
  readonly #side: number;
  readonly #dots: Uint8Array;
  readonly #crowd: Int32Array;
  readonly #crowded: Int32Array;
  readonly #empty: Int32Array;
  readonly #stale: Uint8Array;

  constructor(side: number) {
    this.#side = side;
    this.#dots = new Uint8Array(side * side);
    this.#crowd = new Int32Array(side * side);
    this.#crowded = new Int32Array(side);
    this.#empty = new Int32Array(side);
    this.#stale = new Uint8Array(side).fill(1);
  }

  copy(): Pattern {
    const twin = new Pattern(this.#side);
    twin.#dots.set(this.#dots);
    twin.#crowd.set(this.#crowd);
    return twin;
  }

  set(place: number, dot: 0 | 1): void {
    const side = this.#side;
    const sign = dot === 1 ? 1 : -1;
    this.#dots[place] = dot;
    const x = place % side;
    const y = (place - x) / side;
    for (let dy = 0; dy < SPAN; dy++) {
      const v = (y + dy - REACH + side) % side;
      this.#stale[v] = 1;
      for (let dx = 0; dx < SPAN; dx++)
        this.#crowd[v * side + ((x + dx - REACH + side) % side)]! += sign * WEIGHTS[dy * SPAN + dx]!;
    }
  }

  /** The dot in the tightest cluster, the first of equals; -1 where there is none. */
  mostCrowded(): number {
    this.#refresh();
    let best = -1;
    for (const place of this.#crowded)
      if (place >= 0 && (best < 0 || this.#crowd[place]! > this.#crowd[best]!)) best = place;
    return best;
  }

  /** The place without a dot in the largest void, the first of equals; -1 where there is none. */
  emptiest(): number {
    this.#refresh();
    let best = -1;
    for (const place of this.#empty)
      if (place >= 0 && (best < 0 || this.#crowd[place]! < this.#crowd[best]!)) best = place;
    return best;
  }

  #refresh(): void {
    const side = this.#side;
    const dots = this.#dots;
    const crowd = this.#crowd;
    for (let y = 0; y < side; y++) {
      if (this.#stale[y] === 0) continue;
      this.#stale[y] = 0;
      let crowded = -1;
      let empty = -1;
      for (let i = y * side; i < (y + 1) * side; i++) {
        if (dots[i] === 1) {
          if (crowded < 0 || crowd[i]! > crowd[crowded]!) crowded = i;
        } else if (empty < 0 || crowd[i]! < crowd[empty]!) empty = i;
      }
      this.#crowded[y] = crowded;
      this.#empty[y] = empty;
    }
  }
}
