import { PNG } from 'pngjs';
import { withChunk } from '../../../workers/files/png-chunks.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';

/** A grey PNG of line on paper: 255 of the plane is black. Declares no resolution. */
export function linePng({ width, height, data }: Plane): Uint8Array {
  const grey = Buffer.from(data.map((value) => 255 - value));
  const picture = new PNG({ width, height });
  for (let i = 0; i < grey.length; i++) picture.data.set([grey[i]!, grey[i]!, grey[i]!, 255], i * 4);
  return new Uint8Array(PNG.sync.write(picture, { colorType: 0 }));
}

/** A PNG with transparency, its pixels red, green, blue, opacity. */
export function colourPng(
  width: number,
  height: number,
  pixel: (x: number, y: number) => readonly number[],
): Uint8Array {
  const picture = new PNG({ width, height });
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) picture.data.set(pixel(x, y), (y * width + x) * 4);
  return new Uint8Array(PNG.sync.write(picture, { colorType: 6 }));
}

/** The same PNG, saying that it prints at so many pixels per inch. */
export function withPpi(png: Uint8Array, ppi: number): Uint8Array {
  const chunk = new DataView(new ArrayBuffer(9));
  const perMetre = Math.round(ppi / 0.0254);
  chunk.setUint32(0, perMetre);
  chunk.setUint32(4, perMetre);
  chunk.setUint8(8, 1);
  return withChunk(png, 'pHYs', new Uint8Array(chunk.buffer));
}

/** Pixels of a PNG as 8-bit red, green, blue, opacity, read by another decoder than Keyblock's own. */
export function readPng(bytes: Uint8Array): { width: number; height: number; data: Uint8Array } {
  const { width, height, data } = PNG.sync.read(Buffer.from(bytes));
  return { width, height, data: new Uint8Array(data) };
}

/** A plate or line as Keyblock writes it, back as coverage: black is 255. */
export function coverageOfPng(bytes: Uint8Array): Plane {
  const { width, height, data } = readPng(bytes);
  const coverage = new Uint8Array(new SharedArrayBuffer(width * height));
  for (let i = 0; i < coverage.length; i++) coverage[i] = 255 - data[i * 4]!;
  return { width, height, data: coverage };
}
