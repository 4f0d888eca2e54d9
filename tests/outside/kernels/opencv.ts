import { createRequire } from 'node:module';
import type OpenCv from '@techstark/opencv-js';

/**
 * OpenCV 4.5.2, compiled to WebAssembly. Its module has a `then` of its own, which any `await` of it, an `import`
 * included, would follow for ever: hence `require`.
 */
export const cv = createRequire(import.meta.url)('@techstark/opencv-js') as typeof OpenCv;

/** Waits until OpenCV has started and its functions are there. */
export async function openCvStarts(): Promise<void> {
  if (cv.Mat !== undefined) return;
  await new Promise<void>((resolve) => {
    Object.assign(cv, { onRuntimeInitialized: resolve });
  });
}
