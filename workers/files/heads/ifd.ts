import type { Complain } from '../bad-file.ts';
import { viewOf } from '../bytes.ts';
import { type Ppi, ppiOf, type Turn } from './raster.ts';

/** One directory of a TIFF structure: tag number to its values. */
export interface Directory {
  values(tag: number): number[] | undefined;
  /** The first value of a tag, else `otherwise`. */
  first(tag: number, otherwise: number): number;
  /** Offset of the next directory, 0 none. */
  next: number;
}

const TYPE_BYTES: Record<number, number> = { 1: 1, 2: 1, 3: 2, 4: 4, 5: 8 };
const X_RESOLUTION = 282;
const Y_RESOLUTION = 283;
const RESOLUTION_UNIT = 296;
const ORIENTATION = 274;
const CM_PER_INCH = 2.54;

/**
 * Byte order and first directory of a TIFF structure (TIFF 6.0, section 2); null for anything else.
 * @throws RangeError where it ends early
 */
export function tiffStart(view: DataView): { little: boolean; offset: number } | null {
  const order = view.getUint16(0);
  if (order !== 0x4949 && order !== 0x4d4d) return null;
  const little = order === 0x4949;
  return view.getUint16(2, little) === 42 ? { little, offset: view.getUint32(4, little) } : null;
}

/** Reads the directory at `offset`. @throws RangeError where it reaches outside the file */
export function readDirectory(view: DataView, little: boolean, offset: number): Directory {
  const count = view.getUint16(offset, little);
  const entries = new Map<number, number>();
  for (let i = 0; i < count; i++) {
    const at = offset + 2 + i * 12;
    entries.set(view.getUint16(at, little), at);
  }
  const values = (tag: number) => {
    const at = entries.get(tag);
    return at === undefined ? undefined : readValues(view, little, at);
  };
  return {
    values,
    first: (tag, otherwise) => values(tag)?.[0] ?? otherwise,
    next: view.getUint32(offset + 2 + count * 12, little),
  };
}

function readValues(view: DataView, little: boolean, entry: number): number[] | undefined {
  const type = view.getUint16(entry + 2, little);
  const size = TYPE_BYTES[type];
  if (size === undefined) return undefined;
  const count = view.getUint32(entry + 4, little);
  const inside = count * size <= 4;
  const start = inside ? entry + 8 : view.getUint32(entry + 8, little);
  const values: number[] = [];
  for (let i = 0; i < count; i++) {
    const at = start + i * size;
    if (size === 1) values.push(view.getUint8(at));
    else if (size === 2) values.push(view.getUint16(at, little));
    else if (size === 4) values.push(view.getUint32(at, little));
    else values.push(view.getUint32(at, little) / view.getUint32(at + 4, little));
  }
  return values;
}

/** The resolution a directory declares; null where it or its unit is missing or unknown. */
export function directoryPpi(directory: Directory): Ppi | null {
  const unit = directory.first(RESOLUTION_UNIT, 2);
  if (unit !== 2 && unit !== 3) return null;
  const x = directory.first(X_RESOLUTION, Number.NaN);
  const y = directory.first(Y_RESOLUTION, x);
  return ppiOf(x, y, unit === 3 ? CM_PER_INCH : 1);
}

/** The turn a directory declares; 1 where it declares none or nonsense. */
export function directoryTurn(directory: Directory): Turn {
  const turn = directory.first(ORIENTATION, 1);
  return turn >= 1 && turn <= 8 ? (turn as Turn) : 1;
}

/** What an EXIF block says of size and turn; nothing where it is damaged. */
export function readExif(bytes: Uint8Array): { ppi: Ppi | null; turn: Turn } {
  const nothing = { ppi: null, turn: 1 as Turn };
  try {
    const view = viewOf(bytes);
    const start = tiffStart(view);
    if (!start) return nothing;
    const directory = readDirectory(view, start.little, start.offset);
    return { ppi: directoryPpi(directory), turn: directoryTurn(directory) };
  } catch (error) {
    if (error instanceof RangeError) return nothing;
    throw error;
  }
}

/** Offsets of all directories, first to last. @throws BadFile where they run in a circle */
export function directoryOffsets(
  view: DataView,
  little: boolean,
  first: number,
  complain: Complain,
): number[] {
  const seen = new Set<number>();
  for (let at = first; at !== 0; at = readDirectory(view, little, at).next) {
    if (seen.has(at)) throw complain('the TIFF is damaged (its pages run in a circle); save it again');
    seen.add(at);
  }
  return [...seen];
}
