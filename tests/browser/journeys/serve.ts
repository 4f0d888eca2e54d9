import type { TestProject } from 'vitest/node';
import { serveApp } from '../../serve-app.ts';

/** Serves the built app for the journeys. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const { url, stop } = await serveApp();
  project.provide('appUrl', url);
  return stop;
}

declare module 'vitest' {
  interface ProvidedContext {
    appUrl: string;
  }
}
