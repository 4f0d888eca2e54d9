import { openAsset } from '../nodes/open-picture.ts';
import type { SheetCell } from './contact-cells.ts';
import { sheetPng } from './contact-sheet.ts';
import type { MadeFile, TaskContext } from './task.ts';

export interface ContactFilesInput {
  /** Pictures the engine was given, and their titles. */
  pictures: readonly { asset: string; title: string }[];
}

const VECTOR_PPI = 150;
/** Longest side of a picture on the sheet, px. */
const CELL = 700;

/** Pictures, small, with their titles, on one PNG. */
export async function contactFiles(
  { pictures }: ContactFilesInput,
  { engine, flag, onProgress }: TaskContext,
): Promise<{ files: MadeFile[] }> {
  const { tools, tidy } = engine.toolBox(flag);
  try {
    const cells: SheetCell[] = [];
    for (const [done, { asset, title }] of pictures.entries()) {
      onProgress({ node: title, done, of: pictures.length });
      const { head, pixels } = await openAsset(asset, { vectorPpi: VECTOR_PPI }, tools);
      const { width, height, bands } = head;
      const scale = Math.max(1, Math.ceil(Math.max(width, height) / CELL));
      const [toWidth, toHeight] = [Math.ceil(width / scale), Math.ceil(height / scale)];
      const small = { width: toWidth, height: toHeight, rgba: tools.bytes(toWidth * toHeight * 4) };
      await tools.bands('shrinkRough', { pixels, width, height, bands, scale, to: small }, toHeight);
      tools.free(pixels);
      const rgb = new Uint8Array(small.width * small.height * 3);
      for (let i = 0; i < small.width * small.height; i++)
        for (let band = 0; band < 3; band++) rgb[i * 3 + band] = small.rgba[i * 4 + band]!;
      cells.push({ title, width: small.width, height: small.height, pixels: rgb });
    }
    return { files: [{ name: 'contact-sheet.png', bytes: await sheetPng(cells, tools) }] };
  } finally {
    tidy();
  }
}
