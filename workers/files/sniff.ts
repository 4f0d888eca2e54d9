import type { Complain } from './bad-file.ts';
import { latinText } from './bytes.ts';

export type PictureFormat = 'png' | 'jpeg' | 'webp' | 'tiff' | 'svg';

const READ = 'Keyblock reads PNG, JPEG, WebP, TIFF and SVG';
const LOOKED_AT = 1024;

const READABLE: [PictureFormat, (start: string) => boolean][] = [
  ['png', (start) => start.startsWith('\x89PNG\r\n\x1a\n')],
  ['jpeg', (start) => start.startsWith('\xff\xd8\xff')],
  ['webp', (start) => start.startsWith('RIFF') && start.startsWith('WEBP', 8)],
  ['tiff', (start) => ['II*\0', 'MM\0*', 'II+\0', 'MM\0+'].includes(start.slice(0, 4))],
  ['svg', (start) => start.startsWith('\xff\xfe<\0') || start.startsWith('\xfe\xff\0<')],
  [
    'svg',
    (start) =>
      start
        .replace(/^\xef\xbb\xbf/, '')
        .trimStart()
        .startsWith('<'),
  ],
];

/** Kinds that people take for pictures we read: what to call them, their first bytes and where. */
const OTHERS: [string, string, number][] = [
  ['a GIF', 'GIF8', 0],
  ['a Photoshop document', '8BPS', 0],
  ['a PDF or Illustrator document', '%PDF', 0],
  ['a PostScript document', '%!PS', 0],
  ['a HEIC or AVIF photo', 'ftyp', 4],
  ['packed (gzip, as SVGZ is)', '\x1f\x8b', 0],
];

/**
 * The format of a picture by its first bytes; the file's extension is not looked at.
 * @throws BadFile for an empty file and for what is not read
 */
export function sniff(bytes: Uint8Array, complain: Complain): PictureFormat {
  if (bytes.length === 0) throw complain(`the file is empty; send it again (${READ})`);
  const start = latinText(bytes.subarray(0, LOOKED_AT));
  const format = READABLE.find(([, matches]) => matches(start))?.[0];
  if (format) return format;
  const other = OTHERS.find(([, magic, at]) => start.startsWith(magic, at))?.[0];
  throw complain(other ? `it is ${other}; ${READ}` : `not a picture that is read here; ${READ}`);
}
