import type { RasterHead } from './heads/raster.ts';

const COLOUR_SAMPLES = { grey: 1, rgb: 3, cmyk: 4 };

/** How decoded samples become 8-bit pixels. */
export interface SampleRules {
  /** Samples of one source pixel. */
  sourceBands: number;
  /** Bands of one target pixel. */
  bands: number;
  /** Samples of colour in the source: 1, 3, or 4 for CMYK. */
  colours: number;
  alpha: RasterHead['alpha'];
  /** 8-bit colour, or ink, of each sample value. */
  tone: Uint8Array;
  /** 8-bit alpha of each sample value. */
  plain: Uint8Array;
}

/**
 * The rules for a picture whose decoder hands out `sourceBands` samples up to `max` a pixel; null where
 * the samples cannot hold what the header says. A grey palette may come as one sample.
 */
export function sampleRules(head: RasterHead, sourceBands: number, max: 255 | 65535): SampleRules | null {
  const colours = head.colour === 'rgb' && sourceBands <= 2 ? 1 : COLOUR_SAMPLES[head.colour];
  if (sourceBands < colours) return null;
  const wantsAlpha = head.alpha === 'none' ? 0 : 1;
  const plain = toneTable(max, (value) => value);
  return {
    sourceBands,
    bands: (head.colour === 'grey' ? 1 : 3) + wantsAlpha,
    colours,
    alpha: sourceBands > colours ? head.alpha : 'none',
    tone: toneOf(head, max) ?? plain,
    plain,
  };
}

/** Whether 8-bit source samples are the target's bytes already. */
export function isPlain(rules: SampleRules): boolean {
  const { sourceBands, bands, colours, alpha, tone, plain } = rules;
  const sameBands = sourceBands === bands && colours !== 4 && (bands % 2 === 1 || alpha === 'straight');
  return sameBands && tone === plain && plain.length === 256;
}

/** Converts whole pixels of `source` into `target` from byte `at` on. */
export function convertSamples(
  source: Uint8Array | Uint16Array,
  rules: SampleRules,
  target: Uint8Array,
  at: number,
): void {
  const { sourceBands, bands, colours, alpha, tone, plain } = rules;
  const max = plain.length - 1;
  const targetColours = bands - 1 + (bands % 2);
  let out = at;
  for (let i = 0; i < source.length; i += sourceBands) {
    const cover = alpha === 'none' ? max : source[i + colours]!;
    const lift = alpha === 'multiplied' && cover > 0 ? max / cover : 1;
    const black = colours === 4 ? 255 - tone[lifted(source[i + 3]!, lift, max)]! : 0;
    for (let c = 0; c < targetColours; c++) {
      const value = lifted(source[i + (colours === 1 ? 0 : c)]!, lift, max);
      target[out++] = colours === 4 ? ((255 - tone[value]!) * black + 127) / 255 : tone[value]!;
    }
    if (bands % 2 === 0) target[out++] = plain[cover]!;
  }
}

function lifted(value: number, lift: number, max: number): number {
  return lift === 1 ? value : Math.min(max, Math.round(value * lift));
}

/** The table of colours that are not read as they stand. */
function toneOf({ gamma, reversedInk }: RasterHead, max: number): Uint8Array | null {
  if (gamma !== null) return toneTable(max, (value) => encodeSrgb(value ** (1 / gamma)));
  return reversedInk ? toneTable(max, (value) => 1 - value) : null;
}

/** 8-bit values of every sample from 0 to `max` through `curve` on 0..1. */
function toneTable(max: number, curve: (value: number) => number): Uint8Array {
  return Uint8Array.from({ length: max + 1 }, (_, value) => Math.round(255 * curve(value / max)));
}

/** The sRGB curve (IEC 61966-2-1) on 0..1. */
function encodeSrgb(light: number): number {
  return light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;
}
