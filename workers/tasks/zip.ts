import { zipSync } from 'fflate';
import type { MadeFile } from './task.ts';

export interface ZipInput {
  files: readonly MadeFile[];
}

/** The earliest date a ZIP can hold: equal files make equal archives. */
const NO_DATE = new Date(1980, 0, 1);

/** A ZIP that leaves its files as they are: they are compressed already. */
export async function zip({ files }: ZipInput): Promise<{ files: MadeFile[] }> {
  const entries = Object.fromEntries(files.map(({ name, bytes }) => [name, bytes]));
  return { files: [{ name: 'files.zip', bytes: zipSync(entries, { level: 0, mtime: NO_DATE }) }] };
}
