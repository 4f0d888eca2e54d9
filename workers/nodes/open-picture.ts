import type { Tools } from '../engine/evaluation.ts';
import type { OpenedPicture } from '../files/jobs.ts';

/** No sound picture takes longer to open than this. */
const LIMIT_MS = 60_000;

interface PictureFile {
  name: string;
  bytes: Uint8Array;
}

/** How a picture without pixels of its own is drawn out. */
interface Drawn {
  vectorPpi: number;
  widthMm?: number | undefined;
}

/** A picture's head and pixels; free the pixels when done. @throws BadInput when it cannot be read */
export async function openPicture(
  file: PictureFile,
  options: Drawn,
  tools: Tools,
): Promise<OpenedPicture & { name: string }> {
  const { name, bytes } = file;
  const opened = await tools.alone('openPicture', { bytes, name, options }, LIMIT_MS);
  tools.adopt(opened.pixels.buffer);
  return { name, ...opened };
}

/** The picture that the engine was given under a hash; see `openPicture`. */
export const openAsset = (hash: string, options: Drawn, tools: Tools) =>
  openPicture(tools.asset(hash), options, tools);
