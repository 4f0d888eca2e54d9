import type { ProposalRules } from '../../graph/proposal-rules.ts';
import type { Classes } from './classes.ts';

/** Colours that classes may take, and what the rules make of them. */
export interface Palette {
  /** CIEDE2000 between every two colours, row by row; the colours of the palette come first. */
  apart: Float64Array;
  /** How many colours there are with those of pinned regions. */
  size: number;
  /** How many may be chosen. */
  free: number;
  /** All tints together of each, %. */
  totals: Float64Array;
}

/** What the parts of a cost weigh against each other: contrast, shares, frame, total ink, unused recipes. */
const WEIGHT = { contrast: 1, share: 1.2, frame: 1, total: 0.02, unused: 0.04, alike: 0.15 } as const;

interface Side {
  other: number;
  weight: number;
}

/** A layout of colours on classes, and what it costs: 0 keeps every rule. Moves are priced without counting anew. */
export class LayoutCost {
  readonly #palette: Palette;
  readonly #rules: ProposalRules;
  readonly #sides: readonly (readonly Side[])[];
  readonly #area: Float64Array;
  readonly #frame: Float64Array;
  readonly #targets: readonly (number | undefined)[];
  readonly #earlier: readonly Int32Array[];
  readonly #covered: Float64Array;
  readonly #used: Int32Array;
  #total = 0;
  readonly layout: Int32Array;

  /**
   * @param layout colour of each class to begin with; changed by `move`
   * @param earlier layouts that this one should differ from
   */
  constructor(
    { classes, borders }: Classes,
    palette: Palette,
    rules: ProposalRules,
    layout: Int32Array,
    earlier: readonly Int32Array[],
  ) {
    const areas = classes.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
    const frames = classes.reduce((sum, { frameMm2 }) => sum + frameMm2, 0);
    const shared = borders.reduce((sum, { sharedMm }) => sum + sharedMm, 0);
    this.#palette = palette;
    this.#rules = rules;
    this.#area = Float64Array.from(classes, ({ areaMm2 }) => areaMm2 / areas);
    this.#frame = Float64Array.from(classes, ({ frameMm2 }) => (frames > 0 ? frameMm2 / frames : 0));
    const sides: Side[][] = classes.map(() => []);
    for (const { a, b, sharedMm } of borders) {
      sides[a]!.push({ other: b, weight: sharedMm / shared });
      sides[b]!.push({ other: a, weight: sharedMm / shared });
    }
    this.#sides = sides;
    this.#targets = rules.palette.map(({ sharePercent }) =>
      sharePercent === undefined ? undefined : sharePercent / 100,
    );
    this.#earlier = earlier;
    this.layout = layout;
    this.#covered = new Float64Array(palette.size);
    this.#used = new Int32Array(palette.size);
    layout.forEach((colour, each) => {
      this.#covered[colour]! += this.#area[each]!;
      this.#used[colour]!++;
      this.#total += this.#area[each]! * palette.totals[colour]!;
    });
  }

  /** What the cost would change by if a class took another colour. */
  change(each: number, to: number): number {
    const from = this.layout[each]!;
    if (from === to) return 0;
    const area = this.#area[each]!;
    const { totals } = this.#palette;
    return (
      this.#contrast(each, to) -
      this.#contrast(each, from) +
      this.#share(from, -area) +
      this.#share(to, area) +
      this.#atFrame(each, to) -
      this.#atFrame(each, from) +
      this.#over(this.#total + area * (totals[to]! - totals[from]!)) -
      this.#over(this.#total) +
      this.#unused(from, -1) +
      this.#unused(to, 1) +
      this.#alike(each, to) -
      this.#alike(each, from)
    );
  }

  /** Gives a class another colour. */
  move(each: number, to: number): void {
    const from = this.layout[each]!;
    const area = this.#area[each]!;
    this.#covered[from]! -= area;
    this.#covered[to]! += area;
    this.#used[from]!--;
    this.#used[to]!++;
    this.#total += area * (this.#palette.totals[to]! - this.#palette.totals[from]!);
    this.layout[each] = to;
  }

  #contrast(each: number, colour: number): number {
    const { apart, size } = this.#palette;
    const { contrast } = this.#rules;
    if (contrast === 0) return 0;
    let cost = 0;
    for (const { other, weight } of this.#sides[each]!) {
      const lack = contrast - apart[colour * size + this.layout[other]!]!;
      if (lack > 0) cost += (weight * lack) / contrast;
    }
    return WEIGHT.contrast * cost;
  }

  #share(colour: number, by: number): number {
    const target = this.#targets[colour];
    if (target === undefined) return 0;
    const covered = this.#covered[colour]!;
    return WEIGHT.share * (Math.abs(covered + by - target) - Math.abs(covered - target));
  }

  #atFrame(each: number, colour: number): number {
    const { frame } = this.#rules;
    return frame === null || colour === frame ? 0 : WEIGHT.frame * this.#frame[each]!;
  }

  #over(total: number): number {
    return WEIGHT.total * Math.max(0, total - this.#rules.totalPercent);
  }

  #unused(colour: number, by: number): number {
    if (colour >= this.#palette.free) return 0;
    const before = this.#used[colour] === 0;
    const after = this.#used[colour]! + by === 0;
    return before === after ? 0 : after ? WEIGHT.unused : -WEIGHT.unused;
  }

  #alike(each: number, colour: number): number {
    let most = 0;
    for (const layout of this.#earlier) if (layout[each] === colour) most++;
    return this.#earlier.length === 0 ? 0 : (WEIGHT.alike * most * this.#area[each]!) / this.#earlier.length;
  }
}
