import { resvgParts } from '#wasm';
import { withMemoryLimit } from './memory-limit.ts';

/** 1 GiB: twice the largest picture, since the renderer copies it once, and what drawing needs. */
const LIMIT_PAGES = 16_384;

type Renderer = Awaited<ReturnType<typeof start>>;

let turn = 0;
let started: Promise<Renderer> | undefined;
const wrecked: object[] = [];

/** The SVG renderer, started on first use and once a worker unless it was wrecked. */
export function loadResvg(): Promise<Renderer> {
  started ??= start();
  return started;
}

/**
 * Gives up a renderer that ran out of memory; the next use starts another. Its memory stays taken until
 * the worker ends. `tree` is kept, as collecting it would call into the wreck.
 */
export function abandonResvg(tree: object | undefined): void {
  if (tree) wrecked.push(tree);
  started = undefined;
  turn++;
}

async function start() {
  const { initWasm, Resvg, wasm } = await resvgParts(turn);
  await initWasm(withMemoryLimit(wasm, LIMIT_PAGES));
  return Resvg;
}
