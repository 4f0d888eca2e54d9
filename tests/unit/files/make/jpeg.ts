import { ascii, be16, be32, bitsToBytes, concat } from './bytes.ts';

/** Quantiser of the only coefficient: one step of DC is one grey level. */
const STEP = 8;

interface Options {
  /** Segments between the start and the tables, such as {@link jfif}. */
  segments?: Uint8Array[];
  progressive?: boolean;
  precision?: number;
  /** The size the header claims, where it lies. */
  claim?: [number, number];
}

/** One marker segment. */
export function segment(marker: number, body: ArrayLike<number>): Uint8Array {
  return concat([0xff, marker], be16(body.length + 2), body);
}

/** JFIF with its density; unit 0 none, 1 per inch, 2 per cm. */
export function jfif(unit: number, x: number, y: number): Uint8Array {
  return segment(0xe0, [...ascii('JFIF\0'), 1, 2, unit, ...be16(x, y), 0, 0]);
}

/** The Adobe segment; transform 0 leaves RGB and CMYK as they are. */
export function adobe(transform: number): Uint8Array {
  return segment(0xee, [...ascii('Adobe'), ...be16(100, 0, 0), transform]);
}

/** A big-endian EXIF block: orientation, resolution and its unit. */
export function exifBlock(orientation: number, ppi: number, unit: number): Uint8Array {
  const entry = (tag: number, type: number, value: number[]) => [...be16(tag, type), ...be32(1), ...value];
  return concat(
    [...ascii('MM'), 0, 42, ...be32(8), ...be16(4)],
    entry(274, 3, [...be16(orientation), 0, 0]),
    entry(282, 5, be32(62)),
    entry(283, 5, be32(70)),
    entry(296, 3, [...be16(unit), 0, 0]),
    be32(0, ppi, 1, ppi * 2, 1),
  );
}

/** APP1 with an EXIF block whose vertical resolution is twice the horizontal `ppi`. */
export function exif(orientation: number, ppi: number, unit = 2): Uint8Array {
  return segment(0xe1, concat(ascii('Exif\0\0'), exifBlock(orientation, ppi, unit)));
}

/**
 * A JPEG of flat 8 x 8 blocks: `blocks[row][column]` holds one value 0..255 per component. Each block is
 * its DC step in a 4-bit Huffman code and a 1-bit end of block (ITU-T T.81).
 */
export function jpeg(blocks: number[][][], options: Options = {}): Uint8Array {
  const { segments = [], progressive = false, precision = 8 } = options;
  const components = blocks[0]![0]!.length;
  const [width, height] = options.claim ?? [blocks[0]!.length * 8, blocks.length * 8];
  const parts = Array.from({ length: components }, (_, i) => i + 1);
  const frame = [precision, ...be16(height, width), components, ...parts.flatMap((id) => [id, 0x11, 0])];
  const scan = [components, ...parts.flatMap((id) => [id, 0]), 0, progressive ? 0 : 63, 0];
  const previous = parts.map(() => 128);
  let bits = '';
  for (const block of blocks.flat()) {
    block.forEach((value, i) => {
      bits += step(value - previous[i]!) + (progressive ? '' : '0');
      previous[i] = value;
    });
  }
  return concat(
    [0xff, 0xd8],
    ...segments,
    segment(0xdb, [0, ...Array(64).fill(STEP)]),
    segment(progressive ? 0xc2 : 0xc0, frame),
    segment(0xc4, [0x00, ...[0, 0, 0, 12], ...Array(12).fill(0), ...Array.from({ length: 12 }, (_, i) => i)]),
    segment(0xc4, [0x10, 1, ...Array(15).fill(0), 0]),
    segment(0xda, scan),
    bitsToBytes(bits.padEnd(Math.ceil(bits.length / 8) * 8, '1')).flatMap((byte) =>
      byte === 255 ? [255, 0] : [byte],
    ),
    ...(progressive ? parts.map((id) => emptyScan(id, blocks.flat().length)) : []),
    [0xff, 0xd9],
  );
}

/** The scan of the 63 other coefficients of a component, all zero. */
function emptyScan(id: number, blocks: number): Uint8Array {
  const endOfBlocks = bitsToBytes('0'.repeat(blocks).padEnd(Math.ceil(blocks / 8) * 8, '1'));
  return concat(segment(0xda, [1, id, 0, 1, 63, 0]), endOfBlocks);
}

function step(difference: number): string {
  const size = difference === 0 ? 0 : Math.floor(Math.log2(Math.abs(difference))) + 1;
  const code = size.toString(2).padStart(4, '0');
  const value = difference < 0 ? difference + 2 ** size - 1 : difference;
  return size === 0 ? code : code + value.toString(2).padStart(size, '0');
}
