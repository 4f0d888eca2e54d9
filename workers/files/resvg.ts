import { resvgParts } from '#wasm';
import { withMemoryLimit } from './memory-limit.ts';

/**
 * Most memory for drawings of up to so many pixels, in pages of 64 KiB: 768 MiB and 2 GiB. A drawing takes
 * eight bytes a pixel, since the renderer copies it once, and four more for each group it must blend.
 */
const SIZES = [
  { pixels: 40_000_000, limitPages: 12_288 },
  { pixels: Number.POSITIVE_INFINITY, limitPages: 32_768 },
];

type Renderer = Awaited<ReturnType<typeof start>>;

const started = new Map<number, Promise<Renderer>>();
const wrecked: object[] = [];
let turn = 0;

/** An SVG renderer for drawings of so many pixels, started on first use and once a worker unless it is wrecked. */
export function loadResvg(pixels: number): Promise<Renderer> {
  const limitPages = limitFor(pixels);
  const renderer = started.get(limitPages) ?? start(limitPages);
  started.set(limitPages, renderer);
  return renderer;
}

/**
 * Gives up a renderer that ran out of memory; the next use starts another. Its memory stays taken until
 * the worker ends. `tree` is kept, as collecting it would call into the wreck.
 */
export function abandonResvg(pixels: number, tree: object | undefined): void {
  if (tree) wrecked.push(tree);
  started.delete(limitFor(pixels));
}

function limitFor(pixels: number): number {
  return SIZES.find((size) => pixels <= size.pixels)!.limitPages;
}

async function start(limitPages: number) {
  const { initWasm, Resvg, wasm } = await resvgParts(turn++);
  await initWasm(withMemoryLimit(wasm, limitPages));
  return Resvg;
}
