import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { loadVips } from '../../../workers/files/vips.ts';

/** A folder for files that other programs read, gone with `remove`. */
export class Desk {
  readonly path = mkdtempSync(join(tmpdir(), 'keyblock-files-'));

  file(name: string, bytes: Uint8Array): string {
    const path = join(this.path, name);
    writeFileSync(path, bytes);
    return path;
  }

  remove(): void {
    rmSync(this.path, { recursive: true, force: true });
  }
}

/** What a program prints; throws with what it said when it fails. */
export function run(program: string, ...args: string[]): string {
  return execFileSync(program, args, {
    encoding: 'utf8',
    maxBuffer: 1 << 26,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
}

/** Exit code and everything a program printed. */
export function said(program: string, ...args: string[]): { code: number | null; text: string } {
  const { status, stdout, stderr } = spawnSync(program, args, { encoding: 'utf8' });
  return { code: status, text: `${stdout}${stderr}` };
}

/** A page as another program sees it, 0 full ink .. 255 none. */
export interface SeenPlate {
  width: number;
  height: number;
  data: Uint8Array;
}

/**
 * The plates of a PDF as Ghostscript separates them, in the order of its page, by the file name it gives each
 * (`o(<name>).tif`; the composite is left out).
 */
export async function separated(
  desk: Desk,
  pdf: string,
  ppi: number,
  ...more: string[]
): Promise<Map<string, SeenPlate>> {
  const folder = mkdtempSync(join(desk.path, 'sep-'));
  run(
    'gs',
    '-q',
    '-dNOPAUSE',
    '-dBATCH',
    '-dSAFER',
    '-sDEVICE=tiffsep',
    '-dMaxSpots=32',
    `-r${ppi}`,
    ...more,
    '-o',
    join(folder, 'o.tif'),
    pdf,
  );
  const plates = new Map<string, SeenPlate>();
  for (const name of readdirSync(folder)) {
    const inside = /^o\((.*)\)\.tif$/s.exec(name)?.[1];
    if (inside !== undefined) plates.set(inside, await readGrey(readFileSync(join(folder, name))));
  }
  return plates;
}

/** The first band of a picture file. */
export async function readGrey(bytes: Uint8Array): Promise<SeenPlate> {
  const vips = await loadVips();
  const image = vips.Image.newFromBuffer(bytes);
  const band = image.extractBand(0);
  const { width, height } = band;
  const data = new Uint8Array(band.writeToMemory());
  band.delete();
  image.delete();
  return { width, height, data };
}

/** Stands for many pixels in a comparison: telling two pictures apart pixel by pixel would take minutes. */
export function digest(pixels: ArrayLike<number>): string {
  return createHash('sha256').update(Uint8Array.from(pixels)).digest('hex');
}
