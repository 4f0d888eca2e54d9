import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import type { ResvgParts, StartVips, VipsSetup } from './parts.ts';

const require = createRequire(import.meta.url);

/** Starts libvips from node_modules. */
export async function startVips(setup: VipsSetup) {
  const { default: start }: { default: StartVips } = await import('wasm-vips');
  return start(setup);
}

/** The SVG renderer; each `turn` is a separate copy with memory of its own. */
export async function resvgParts(turn: number): Promise<ResvgParts> {
  const wasmPath = require.resolve('@resvg/resvg-wasm/index_bg.wasm');
  const glue = pathToFileURL(wasmPath.replace('index_bg.wasm', 'index.mjs'));
  const { initWasm, Resvg }: Omit<ResvgParts, 'wasm'> = await import(`${glue}?turn=${turn}`);
  return { initWasm, Resvg, wasm: await readFile(wasmPath) };
}
