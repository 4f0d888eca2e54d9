import { bigEndian, joinBytes, latinBytes, viewOf } from '../bytes.ts';

const HEADER = 128;
const PERCEPTUAL_MEDIA_WHITE = [0.9642, 1, 0.8249] as const;

/**
 * An ICC profile (ICC.1:2001-04, version 2) of a printer with one black ink whose grey values are linear in light:
 * the smallest output profile there is, for files whose plates are spot inks.
 */
export function greyProfile(): Uint8Array<ArrayBuffer> {
  const tags: [string, Uint8Array][] = [
    ['desc', description('One ink, linear')],
    ['cprt', joinBytes([latinBytes('text\0\0\0\0No rights reserved'), new Uint8Array(1)])],
    ['wtpt', whitePoint()],
    ['kTRC', joinBytes([latinBytes('curv\0\0\0\0'), bigEndian(0)])],
  ];
  const table = HEADER + 4 + tags.length * 12;
  let at = table;
  const rows = tags.map(([name, data]) => {
    const row = joinBytes([latinBytes(name), bigEndian(at), bigEndian(data.length)]);
    at += whole4(data.length);
    return row;
  });
  const bodies = tags.map(([, data]) => joinBytes([data, new Uint8Array(whole4(data.length) - data.length)]));
  return joinBytes([header(at), bigEndian(tags.length), ...rows, ...bodies]);
}

function header(size: number): Uint8Array {
  const bytes = new Uint8Array(HEADER);
  const view = viewOf(bytes);
  view.setUint32(0, size);
  view.setUint32(8, 0x02100000);
  bytes.set(latinBytes('prtrGRAYXYZ '), 12);
  [2001, 4, 1, 0, 0, 0].forEach((part, i) => {
    view.setUint16(24 + i * 2, part);
  });
  bytes.set(latinBytes('acsp'), 36);
  PERCEPTUAL_MEDIA_WHITE.forEach((value, i) => {
    view.setInt32(68 + i * 4, fixed(value));
  });
  return bytes;
}

function whitePoint(): Uint8Array {
  return joinBytes([
    latinBytes('XYZ \0\0\0\0'),
    ...PERCEPTUAL_MEDIA_WHITE.map((value) => bigEndian(fixed(value))),
  ]);
}

/** A textDescriptionType with its ASCII part only. */
function description(text: string): Uint8Array {
  const ascii = joinBytes([latinBytes(text), new Uint8Array(1)]);
  const rest = new Uint8Array(4 + 4 + 2 + 1 + 67);
  return joinBytes([latinBytes('desc\0\0\0\0'), bigEndian(ascii.length), ascii, rest]);
}

/** s15Fixed16Number */
function fixed(value: number): number {
  return Math.round(value * 65_536);
}

function whole4(length: number): number {
  return Math.ceil(length / 4) * 4;
}
