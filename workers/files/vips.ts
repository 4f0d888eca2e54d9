import { startVips } from '#wasm';
import type { VipsApi } from './wasm/parts.ts';

let started: Promise<VipsApi> | undefined;

/**
 * libvips, started on first use and once a worker. It works on one thread (workers are our threads),
 * writes nothing to the console and keeps no finished operation. Its memory never shrinks: ending the
 * worker gives it back.
 */
export function loadVips(): Promise<VipsApi> {
  started ??= start();
  return started;
}

/** Gives up a libvips that has crashed; the next use starts another. */
export function abandonVips(): void {
  started = undefined;
}

async function start(): Promise<VipsApi> {
  const silent = () => {};
  const vips = await startVips({
    dynamicLibraries: [],
    preRun: (module) => {
      module.ENV.VIPS_WARNING = 'off';
    },
    print: silent,
    printErr: silent,
  });
  vips.concurrency(1);
  vips.Cache.max(0);
  return vips;
}

/** What libvips says of its refusal, for telling harmless ones. */
export function refusalText(thrown: unknown): string {
  return thrown instanceof WebAssembly.Exception && 'message' in thrown ? String(thrown.message) : '';
}

/** Whether `thrown` is libvips refusing a file, or crashing on it. */
export function isVipsRefusal(thrown: unknown): boolean {
  return thrown instanceof WebAssembly.Exception || thrown instanceof WebAssembly.RuntimeError;
}
