import vipsScript from 'wasm-vips?url';
import resvgWasm from '@resvg/resvg-wasm/index_bg.wasm?url';
import resvgScript from '@resvg/resvg-wasm?url';
import vipsWasm from 'wasm-vips/vips.wasm?url';
import type { ResvgParts, StartVips, VipsSetup } from './parts.ts';

/**
 * Starts libvips from the page's own files.
 * @throws Error where the page is not cross-origin isolated: libvips would wait for ever.
 */
export async function startVips(setup: VipsSetup) {
  if (!crossOriginIsolated) {
    throw new Error(
      'This page is not cross-origin isolated, so pictures cannot be read. Its host must send ' +
        '"Cross-Origin-Opener-Policy: same-origin" and "Cross-Origin-Embedder-Policy: require-corp".',
    );
  }
  const { default: start }: { default: StartVips } = await import(/* @vite-ignore */ vipsScript);
  const script = new URL(vipsScript, import.meta.url).href;
  return start({ ...setup, locateFile: () => vipsWasm, mainScriptUrlOrBlob: script });
}

/** The SVG renderer; each `turn` is a separate copy with memory of its own. */
export async function resvgParts(turn: number): Promise<ResvgParts> {
  const script = `${resvgScript}#${turn}`;
  const { initWasm, Resvg }: Omit<ResvgParts, 'wasm'> = await import(/* @vite-ignore */ script);
  const response = await fetch(resvgWasm);
  if (!response.ok) throw new Error(`The SVG renderer could not be fetched (${response.status}).`);
  return { initWasm, Resvg, wasm: new Uint8Array(await response.arrayBuffer()) };
}
