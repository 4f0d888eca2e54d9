import type { initWasm, Resvg } from '@resvg/resvg-wasm';
import type Vips from 'wasm-vips';

/** libvips once it runs. */
export type VipsApi = typeof Vips;
export type VipsImage = Vips.Image;
export type StartVips = typeof Vips;
export type VipsSetup = NonNullable<Parameters<StartVips>[0]>;

/** One not yet started copy of the SVG renderer and the bytes it starts from. */
export interface ResvgParts {
  initWasm: typeof initWasm;
  Resvg: typeof Resvg;
  wasm: Uint8Array<ArrayBuffer>;
}
