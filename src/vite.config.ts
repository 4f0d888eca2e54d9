import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import { keyblockCommands } from '../tests/browser/commands.ts';
import { CHROMIUM_FLAGS, findChromium } from '../tests/chromium.ts';

const repo = fileURLToPath(new URL('..', import.meta.url));

/** Shared memory needs a cross-origin isolated page: these two headers, on every response. */
const isolation = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
};

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  plugins: [react()],
  server: { headers: isolation, fs: { allow: [repo] } },
  preview: { headers: isolation },
  worker: { format: 'es' },
  optimizeDeps: {
    include: [
      'comlink',
      'fflate',
      'zod',
      'zustand',
      'zustand/vanilla',
      'react',
      'react-dom/client',
      'idb',
      'konva',
      'react-konva',
      '@xyflow/react',
      '@noble/hashes/sha2.js',
      '@noble/hashes/utils.js',
    ],
  },
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
  },
  test: {
    projects: [
      {
        extends: true,
        root: repo,
        test: {
          name: 'node',
          include: ['tests/unit/**/*.test.ts', 'tests/outside/**/*.test.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        extends: true,
        root: repo,
        test: {
          name: 'chromium',
          include: ['tests/browser/*.test.{ts,tsx}'],
          testTimeout: 120_000,
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            provider: playwright({
              launchOptions: { executablePath: findChromium() ?? undefined, args: CHROMIUM_FLAGS },
            }),
            instances: [{ browser: 'chromium' }],
            commands: keyblockCommands,
          },
        },
      },
      {
        extends: true,
        root: repo,
        test: {
          name: 'journeys',
          include: ['tests/browser/journeys/*.test.ts'],
          globalSetup: ['tests/browser/journeys/serve.ts'],
          testTimeout: 240_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
