import { mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { MadeFile } from '../../workers/client.ts';
import { BadInput } from '../graph/complaint.ts';

/** A JSON file, two spaces deep. */
export function jsonFile(name: string, value: unknown): MadeFile {
  return { name, bytes: new TextEncoder().encode(`${JSON.stringify(value, null, 2)}\n`) };
}

/**
 * Writes finished files into a folder: each under another name first, so that no half-written one is ever found.
 *
 * @throws BadInput when the folder cannot be made or written
 */
export async function writeFiles(folder: string, files: readonly MadeFile[]): Promise<void> {
  const part = (file: MadeFile) => join(folder, `${file.name}.part`);
  try {
    for (const file of files) {
      await mkdir(dirname(part(file)), { recursive: true });
      await writeFile(part(file), file.bytes);
    }
    for (const file of files) await rename(part(file), join(folder, file.name));
  } catch (error) {
    await Promise.all(files.map((file) => rm(part(file), { force: true }).catch(() => {})));
    throw new BadInput(
      `cannot write to ${folder} (${(error as NodeJS.ErrnoException).code}); choose another --out`,
    );
  }
}
