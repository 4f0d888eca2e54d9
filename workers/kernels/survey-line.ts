import { darkness, PLAIN, type Reading, shortOf } from './coverage.ts';
import { hueSlot, SLOTS } from './hue.ts';
import { paperTint } from './paper-tint.ts';

export interface SurveyArgs {
  pixels: Uint8Array;
  bands: 1 | 2 | 3 | 4;
  width: number;
  /** A colour that reaches so many px to all sides is a wash, not a line. */
  broad: number;
}

/** How line is read, and whether lines of colour stand beside black ones. */
export interface Survey extends Reading {
  beside: boolean;
}

/** A pixel that falls less short of the paper in any colour counts as paper. */
const MARKED = 48;
/** A marked pixel with less difference between its colours counts as grey. */
const COLOURED = 40;
/** About so many pixels are looked at, in whole rows. */
const SAMPLE = 2_000_000;
/** One hue spans four slots. */
const ONE_HUE = 4;
/** Grey pixels this dark are black line; what lies within so many px of one may be a fringe of the scanner. */
const BLACK = 128;
const FRINGE = 3;
/** In a drawing all of one hue, black is at most this part of the marked pixels. */
const MOST_BLACK = 0.005;
/** Slots that the hue of one wash strays. */
const ALIKE = 2;
/** A hue is a line's from this part of the marked pixels on, if less than that part of its own is broad. */
const LEAST_SHARE = 0.003;
const MOST_BROAD = 0.25;
/** So many of a hue's pixels are stronger than what counts as full. */
const STRONGER = 0.02;

/**
 * Chooses how line is read from a picture. The tint of the paper is divided out. Lines of colour count in full by
 * their colourfulness, each hue for itself, so that a yellow line is not pale; all else counts by darkness: greys,
 * washes beside black line, and the coloured fringes a scanner makes.
 */
export function surveyLine(args: SurveyArgs): Survey {
  const { pixels, bands } = args;
  if (bands < 3) return { ...PLAIN, beside: false };
  const paper = paperTint(pixels, bands as 3 | 4);
  const found = coloursOf(args, paper);
  const { marked, black, coloured, perSlot } = found;
  const allColour = coloured > 0.9 * marked && black <= MOST_BLACK * marked;
  const oneHue = allColour && densestWindow(perSlot) > 0.98 * coloured;
  const full = new Uint8Array(SLOTS);
  if (oneHue) full.fill(Math.max(MARKED, highLevel(sumOf(found.strengths), STRONGER * coloured)));
  else for (let slot = 0; slot < SLOTS; slot++) full[slot] = fullOf(slot, found);
  const channel = full.some((value) => value > 0) ? 'colour' : 'darkness';
  return { channel, paper, full, beside: channel === 'colour' && !oneHue };
}

/** What there is of each hue; `strengths` counts colourfulness, 256 levels a slot. */
interface Colours {
  marked: number;
  black: number;
  coloured: number;
  perSlot: Uint32Array;
  /** Of these, pixels that lie away from black line, and pixels with their own colour to all sides. */
  apart: Uint32Array;
  broad: Uint32Array;
  strengths: Uint32Array;
}

function coloursOf({ pixels, bands, width, broad }: SurveyArgs, paper: Reading['paper']): Colours {
  const [red, green, blue] = paper.map(shortOf) as [Uint8Array, Uint8Array, Uint8Array];
  const row = width * bands;
  const opaque = (p: number) => bands === 3 || pixels[p + 3]! >= BLACK;
  const colourAt = (p: number) => {
    const [r, g, b] = [red[pixels[p]!]!, green[pixels[p + 1]!]!, blue[pixels[p + 2]!]!];
    return Math.max(r, g, b) - Math.min(r, g, b);
  };
  const isBlack = (p: number) => {
    const dark = darkness(red[pixels[p]!]!, green[pixels[p + 1]!]!, blue[pixels[p + 2]!]!);
    return dark >= BLACK && opaque(p) && colourAt(p) < COLOURED;
  };
  const slotAt = (p: number) =>
    hueSlot(255 - red[pixels[p]!]!, 255 - green[pixels[p + 1]!]!, 255 - blue[pixels[p + 2]!]!);
  const isLike = (p: number, slot: number, colour: number) => {
    if (!opaque(p) || 2 * colourAt(p) < colour) return false;
    const turn = (slotAt(p) - slot + SLOTS) % SLOTS;
    return turn <= ALIKE || turn >= SLOTS - ALIKE;
  };
  /** Whether it holds at a pixel `away` px to a side, 0..3; not beyond the edge. */
  const beside = (p: number, x: number, away: number, side: number, holds: (p: number) => boolean) => {
    const to =
      side === 0
        ? p - away * row
        : side === 1
          ? p + away * row
          : side === 2
            ? p - away * bands
            : p + away * bands;
    if (to < 0 || to >= pixels.length) return false;
    if (side === 2 && x < away) return false;
    if (side === 3 && x + away >= width) return false;
    return holds(to);
  };
  const all: Colours = {
    marked: 0,
    black: 0,
    coloured: 0,
    perSlot: new Uint32Array(SLOTS),
    apart: new Uint32Array(SLOTS),
    broad: new Uint32Array(SLOTS),
    strengths: new Uint32Array(SLOTS * 256),
  };
  const everyRow = Math.max(1, Math.floor(pixels.length / bands / SAMPLE));
  for (let p = 0, x = 0; p < pixels.length; p += bands, x++) {
    if (x === width) {
      x = 0;
      p += (everyRow - 1) * row;
      if (p >= pixels.length) break;
    }
    const [r, g, b] = [red[pixels[p]!]!, green[pixels[p + 1]!]!, blue[pixels[p + 2]!]!];
    const strength = Math.max(r, g, b);
    if (strength < MARKED || !opaque(p)) continue;
    all.marked++;
    const colour = strength - Math.min(r, g, b);
    if (colour < COLOURED) {
      if (darkness(r, g, b) >= BLACK) all.black++;
      continue;
    }
    all.coloured++;
    const slot = hueSlot(255 - r, 255 - g, 255 - b);
    all.perSlot[slot]!++;
    let fringe = false;
    for (let side = 0; side < 4 && !fringe; side++)
      for (let away = 1; away <= FRINGE && !fringe; away++) fringe = beside(p, x, away, side, isBlack);
    if (!fringe) {
      all.apart[slot]!++;
      all.strengths[256 * slot + colour]!++;
    }
    const like = (to: number) => isLike(to, slot, colour);
    if ([0, 1, 2, 3].every((side) => beside(p, x, broad, side, like))) all.broad[slot]!++;
  }
  return all;
}

/** The colourfulness that counts as full line in a slot of hue; 0 where it is no line's. */
function fullOf(slot: number, { marked, apart, broad, perSlot, strengths }: Colours): number {
  const near = [slot + SLOTS - 1, slot, slot + 1].map((s) => s % SLOTS);
  const sum = (counts: Uint32Array) => near.reduce((total, s) => total + counts[s]!, 0);
  if (sum(apart) <= LEAST_SHARE * marked || sum(broad) >= MOST_BROAD * sum(perSlot)) return 0;
  const counts = new Uint32Array(256);
  for (const s of near) for (let v = 0; v < 256; v++) counts[v]! += strengths[256 * s + v]!;
  return Math.max(MARKED, highLevel(counts, STRONGER * sum(apart)));
}

/** Counts of all slots together. */
function sumOf(strengths: Uint32Array): Uint32Array {
  const counts = new Uint32Array(256);
  strengths.forEach((count, i) => {
    counts[i & 255]! += count;
  });
  return counts;
}

function densestWindow(hues: Uint32Array): number {
  let best = 0;
  for (let start = 0; start < SLOTS; start++) {
    let sum = 0;
    for (let k = 0; k < ONE_HUE; k++) sum += hues[(start + k) % SLOTS]!;
    best = Math.max(best, sum);
  }
  return best;
}

/** The level that more than `pixels` pixels reach; 0 for none. */
function highLevel(counts: Uint32Array, pixels: number): number {
  let sum = 0;
  for (let level = 255; level > 0; level--) {
    sum += counts[level]!;
    if (sum > 0 && sum >= Math.max(8, pixels)) return level;
  }
  return 0;
}
