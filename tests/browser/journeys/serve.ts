import { fileURLToPath } from 'node:url';
import { build, preview } from 'vite';
import type { TestProject } from 'vitest/node';

const configFile = fileURLToPath(new URL('../../../src/vite.config.ts', import.meta.url));

/** Builds the app as it is delivered and serves it on a free port for the journeys. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  await build({ configFile, logLevel: 'error' });
  const server = await preview({ configFile, logLevel: 'error', preview: { port: 0, open: false } });
  const url = server.resolvedUrls?.local[0];
  if (!url) throw new Error('the built app is not served');
  project.provide('appUrl', url);
  return () => server.close();
}

declare module 'vitest' {
  interface ProvidedContext {
    appUrl: string;
  }
}
