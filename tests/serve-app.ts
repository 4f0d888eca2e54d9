import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, preview } from 'vite';

const configFile = fileURLToPath(new URL('../src/vite.config.ts', import.meta.url));

export interface ServedApp {
  url: string;
  stop(): Promise<void>;
}

/** Builds the app as it is delivered, into a folder of its own, and serves it on a free port. */
export async function serveApp(): Promise<ServedApp> {
  const outDir = mkdtempSync(join(tmpdir(), 'keyblock-app-'));
  const common = { configFile, logLevel: 'error', build: { outDir, emptyOutDir: true } } as const;
  await build(common);
  const server = await preview({ ...common, preview: { port: 0, open: false } });
  const stop = async () => {
    await server.close();
    rmSync(outDir, { recursive: true, force: true });
  };
  const url = server.resolvedUrls?.local[0];
  if (url) return { url, stop };
  await stop();
  throw new Error('the built app is not served');
}
