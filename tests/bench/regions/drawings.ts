import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { complainAbout } from '../../../workers/files/bad-file.ts';
import { drawSvg } from '../../../workers/files/draw-svg.ts';
import { coverage, PLAIN } from '../../../workers/kernels/coverage.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { sharedPlane } from '../pictures.ts';

/**
 * Line drawings of the npm package `openmoji` (CC BY-SA 4.0, openmoji.org), read from where it is installed; no file of
 * it is copied.
 */
const FOLDER = join(dirname(createRequire(import.meta.url).resolve('openmoji/package.json')));

/** Every drawing is drawn so many pixels wide and high. */
export const SIDE = 1200;

/** Drawings known to be hard, listed by themselves. */
export const HARD = '1F22F 1F420 1F5FE 1F975 1F354 1F37D 1F9DD E048 1F309 1F94C'.split(' ');

/** The five skin tones: the same lines once more. */
const SKIN_TONE = /1F3F[B-F]/;

export type Half = 'tuning' | 'held-out';

/** Names of drawings of one half, in the order of their hash, which is none of their own. */
export function namesOf(half: Half): string[] {
  return readdirSync(join(FOLDER, 'black', 'svg'))
    .map((file) => file.replace('.svg', ''))
    .filter((name) => !SKIN_TONE.test(name) && halfOf(name) === half)
    .sort((a, b) => hashOf(a) - hashOf(b));
}

/** Which half a drawing is in: the lowest bit of the hash of its name. */
export function halfOf(name: string): Half {
  return hashOf(name) % 2 === 0 ? 'tuning' : 'held-out';
}

/** FNV-1a, 32 bits (Fowler, Noll, Vo), with the mixing of murmur3 behind it since names differ in their last letters. */
function hashOf(name: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193);
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) >>> 0;
}

export function svgOf(name: string, variant: 'black' | 'color'): string {
  return readFileSync(join(FOLDER, variant, 'svg', `${name}.svg`), 'utf8');
}

/** Whether anything in it is stroked: a drawing of filled shapes alone has no line to scale. */
export function isStroked(svg: string): boolean {
  return /\bstroke-width="/.test(svg);
}

/** The SVG with all its strokes so many times as wide. Those files give widths as attributes only. */
export function withStrokes(svg: string, times: number): string {
  const scaled = svg.replace(
    /\bstroke-width="([\d.]+)"/g,
    (_, width) => `stroke-width="${Number(width) * times}"`,
  );
  const [root] = /<svg[^>]*>/.exec(scaled)!;
  return /\bstroke-width="/.test(root) ? scaled : scaled.replace('<svg', `<svg stroke-width="${times}"`);
}

/** Pixels of an SVG, red, green, blue, opacity. */
export async function pixelsOf(svg: string, name: string): Promise<Uint8Array> {
  const pixels = new Uint8Array(SIDE * SIDE * 4);
  await drawSvg(new TextEncoder().encode(svg), SIDE, SIDE, pixels, complainAbout(name));
  return pixels;
}

/** Line coverage of a black drawing with its strokes so many times as wide. */
export async function lineOf(name: string, strokes: number): Promise<Plane> {
  const pixels = await pixelsOf(withStrokes(svgOf(name, 'black'), strokes), name);
  const line = sharedPlane(SIDE, SIDE);
  coverage({ pixels, bands: 4, reading: PLAIN, line }, 0, SIDE);
  return line;
}
