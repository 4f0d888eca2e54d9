import type { Lab } from '../graph/inks.ts';

/** A plate as far as a trap depends on it; plates stand in print order. */
export interface TrapPlate {
  /** Contrast ratio of its ink, 0..1. */
  opacity: number;
}

/** What trapping needs to know of a print. */
export interface TrapPrint {
  plates: readonly TrapPlate[];
  /** Predicted Lab of a tint of every plate, shares 0..1. */
  labOf(tints: readonly number[]): Lab;
}

export const TRAP_REASONS = [
  'lighter-spreads',
  'under-opaque',
  'held-back',
  'both-bare',
  'one-plate',
  'against-paper',
  'shared-ink',
  'set-by-hand',
] as const;

export type TrapReason = (typeof TRAP_REASONS)[number];

/** What happens at the border of two regions, `first` and `second`. */
export interface TrapDecision {
  /** `spread`: plates of one region grow into the other; `hold-back`: plates shrink away from a region. */
  does: 'spread' | 'hold-back' | 'none';
  /** The region whose coverage is carried over the border; null where nothing is done. */
  from: 'first' | 'second' | null;
  /** Indices of the plates that change in the other region. */
  plates: readonly number[];
  reason: TrapReason;
}

/** Below this share a region counts as bare of a plate. */
const BARE = 0.02;
/** Tints this far apart, or nearer, are about the same. */
const ALIKE = 0.1;
/** An ink from this tint on shows through a gap well enough to hide it. */
const HIDES_GAP = 0.2;
/** From this contrast ratio on an ink hides what lies under it. */
const OPAQUE = 0.5;
/** A colour up to this L* is dark. */
const DARK = 50;

/**
 * Whether two regions that meet are trapped, and which way: the lighter spreads under the darker; where an opaque
 * ink of the lighter prints later, the darker, printed before it, spreads under it. Neighbours that share an ink at
 * about the same tint need none. Round bare paper the supporting inks of a dark are held back.
 *
 * Source of the rules: common practice of the trade.
 *
 * @param first tints of every plate, shares 0..1, in print order
 * @param byHand trap even where neighbours share an ink
 */
export function trapBetween(
  first: readonly number[],
  second: readonly number[],
  print: TrapPrint,
  byHand = false,
): TrapDecision {
  const differing = print.plates.map((_, i) => i).filter((i) => Math.abs(first[i]! - second[i]!) > ALIKE);
  const bare = [first, second].map((tints) => tints.every((tint) => tint < BARE));
  if (bare[0] && bare[1]) return none('both-bare');
  if (bare[0] || bare[1]) return holdBack(bare[0] ? second : first, bare[0] ? 'first' : 'second', print);
  if (differing.length < 2) return none('one-plate');
  const more = differing.filter((i) => first[i]! > second[i]!);
  const less = differing.filter((i) => first[i]! < second[i]!);
  const shares = print.plates.some((_, i) => sharesInk(first[i]!, second[i]!));
  if (more.length === 0 || less.length === 0 || (shares && !byHand)) return none('shared-ink');
  const lighter = print.labOf(first)[0] >= print.labOf(second)[0] ? 'first' : 'second';
  const [own, other] = lighter === 'first' ? [more, less] : [less, more];
  const last = own.filter((i) => print.plates[i]!.opacity >= OPAQUE).at(-1);
  const under = other.filter((i) => last !== undefined && i < last);
  if (under.length > 0) {
    const darker = lighter === 'first' ? 'second' : 'first';
    return { does: 'spread', from: darker, plates: under, reason: 'under-opaque' };
  }
  const reason = byHand && shares ? 'set-by-hand' : 'lighter-spreads';
  return { does: 'spread', from: lighter, plates: own, reason };
}

function none(reason: TrapReason): TrapDecision {
  return { does: 'none', from: null, plates: [], reason };
}

/** Whether an ink of both hides a gap between them. */
function sharesInk(one: number, other: number): boolean {
  return Math.min(one, other) >= HIDES_GAP && Math.abs(one - other) <= ALIKE;
}

/** A dark of several inks beside paper: all but its darkest ink stay back, if that is dark enough alone. */
function holdBack(dark: readonly number[], paper: 'first' | 'second', print: TrapPrint): TrapDecision {
  const inked = dark.flatMap((tint, i) => (tint >= BARE ? [i] : []));
  const alone = inked.map((i) => print.labOf(dark.map((tint, k) => (k === i ? tint : 0)))[0]);
  const darkest = inked[alone.indexOf(Math.min(...alone))]!;
  const supports = inked.filter((i) => i !== darkest);
  if (supports.length === 0 || Math.min(...alone) > DARK) return none('against-paper');
  return { does: 'hold-back', from: paper, plates: supports, reason: 'held-back' };
}

/** Tints of the strip that a trap makes: those of the region it lies in, changed plates from the other. */
export function overlapOf(
  first: readonly number[],
  second: readonly number[],
  { from, plates }: TrapDecision,
): number[] {
  const [source, ground] = from === 'first' ? [first, second] : [second, first];
  return ground.map((tint, i) => (plates.includes(i) ? source[i]! : tint));
}
