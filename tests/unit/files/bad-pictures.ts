import { zlibSync } from 'fflate';
import { ascii, be16, be32, concat, le16, le32, utf8 } from './make/bytes.ts';
import { adobe, jpeg, segment } from './make/jpeg.ts';
import * as png from './make/png.ts';
import { blackCornerG4, deflate, directory, type Tags, tiff, withPage } from './make/tiff.ts';
import { canvas, losslessData, riffChunk, webp } from './make/webp.ts';

/** A file that must be refused with one line that says `says`. */
export interface BadPicture {
  name: string;
  bytes: Uint8Array;
  says: RegExp;
}

const MEGABYTE = 1024 * 1024;
const GREY_TAGS: Tags = { 258: [8], 259: [1], 262: [1] };

const GREY_LINES = png.pixels([0, 1, 2, 0, 3, 4]);
const GOOD_PNG = png.png(png.header(2, 2, 8, png.GREY), GREY_LINES);
const NOISY_PNG = png.png(
  png.header(64, 64, 8, png.GREY),
  png.pixels(Array.from({ length: 64 * 65 }, (_, i) => (i % 65 === 0 ? 0 : (i * i * 31) % 251))),
);
const GOOD_JPEG = jpeg(Array.from({ length: 8 }, (_, y) => Array.from({ length: 8 }, (_, x) => [x * y * 4])));
/** A progressive JPEG; its last scan is the 11 bytes before its end. */
const SCANS = jpeg([[[1]]], { progressive: true });
const GOOD_TIFF = tiff(2, 2, [1, 2, 3, 4], GREY_TAGS);
const LOSSLESS = losslessData(8, 8, [1, 2], { red: 3, blue: 4, alpha: 255 }, Array(64).fill(true));
const GOOD_WEBP = webp(riffChunk('VP8L', LOSSLESS));

const DAMAGED = /is damaged/;
const EARLY = /the file ends early \(truncated (PNG|JPEG|TIFF|WebP)\); save or send it again$/;
const TOO_LARGE = /\d+ x \d+ px.*at most 120 megapixels/;

function flipped(bytes: Uint8Array, at: number): Uint8Array {
  const copy = bytes.slice();
  copy[at]! ^= 0x10;
  return copy;
}

/** A TIFF whose only page points back at itself as the next. */
function looped(): Uint8Array {
  return concat([0x49, 0x49, 42, 0], le32(8), directory({ ...GREY_TAGS, 256: [1], 257: [1] }, 8, 8));
}

/** A TIFF whose strip offsets claim to be four thousand million. */
function countBomb(): Uint8Array {
  const entry = concat(le16(273, 4), le32(0xffffffff, 8));
  return concat([0x49, 0x49, 42, 0], le32(8), le16(1), entry, le32(0));
}

function svg(attributes: string, body = '<path d="M0 0h9v9z"/>', before = ''): Uint8Array {
  return utf8(`${before}<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${body}</svg>`);
}

function nestedEntities(): string {
  const levels = 'bcdefghij'
    .split('')
    .map((name, i) => `<!ENTITY ${name} "${`&${'abcdefghi'[i]};`.repeat(10)}">`);
  return `<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa">${levels.join('')}]>`;
}

function nestedUses(): string {
  const levels = Array.from(
    { length: 12 },
    (_, i) => `<g id="u${i + 1}">${`<use href="#u${i}"/>`.repeat(10)}</g>`,
  );
  return `<defs><path id="u0" d="M0 0h9v9z"/>${levels.join('')}</defs><use href="#u12"/>`;
}

const PNGS: BadPicture[] = [
  { name: 'cut-in-pixels.png', bytes: NOISY_PNG.subarray(0, NOISY_PNG.length >> 1), says: EARLY },
  { name: 'cut-in-header.png', bytes: GOOD_PNG.subarray(0, 20), says: EARLY },
  { name: 'no-end.png', bytes: GOOD_PNG.subarray(0, GOOD_PNG.length - 12), says: EARLY },
  { name: 'bad-sum-of-pixels.png', bytes: flipped(NOISY_PNG, NOISY_PNG.length - 20), says: DAMAGED },
  { name: 'bad-sum-of-header.png', bytes: flipped(GOOD_PNG, 30), says: DAMAGED },
  {
    name: 'bad-sum-of-size.png',
    bytes: png.png(png.header(2, 2, 8, png.GREY), png.chunk('pHYs', [...be32(1, 1), 1], 7), GREY_LINES),
    says: /its pHYs block fails its check/,
  },
  {
    name: 'garbage-pixels.png',
    bytes: png.png(png.header(2, 2, 8, png.GREY), png.chunk('IDAT', [1, 2, 3, 4, 5])),
    says: DAMAGED,
  },
  { name: 'too-few-pixels.png', bytes: png.png(png.header(9, 900, 8, png.GREY), GREY_LINES), says: DAMAGED },
  { name: 'no-pixels.png', bytes: png.png(png.header(2, 2, 8, png.GREY)), says: DAMAGED },
  {
    name: 'line-break.png',
    bytes: png.png(png.header(2, 2, 8, png.GREY), png.chunk('a\nb\0', [], 7), GREY_LINES),
    says: /its a b {1,2}block fails/,
  },
  { name: 'no-header.png', bytes: png.png(GREY_LINES), says: /no header/ },
  { name: 'odd-depth.png', bytes: png.png(png.header(2, 2, 7, png.GREY), GREY_LINES), says: DAMAGED },
  { name: 'no-palette.png', bytes: png.png(png.header(2, 2, 8, png.PALETTE), GREY_LINES), says: DAMAGED },
  { name: 'huge.png', bytes: png.png(png.header(60_000, 60_000, 8, png.RGB), GREY_LINES), says: TOO_LARGE },
  {
    name: 'no-size.png',
    bytes: png.png(png.header(0, 4, 8, png.GREY), GREY_LINES),
    says: /0 x 4 px.*nothing in it/,
  },
  {
    name: 'fewer-pixels-than-it-says.png',
    bytes: png.png(png.header(10_000, 10_000, 16, png.RGB), png.pixels(new Uint8Array(16 * MEGABYTE))),
    says: /holds fewer pixels than it says/,
  },
  {
    name: 'profile-bomb.png',
    bytes: png.png(
      png.header(2, 2, 8, png.GREY),
      png.chunk('iCCP', concat(ascii('p\0\0'), zlibSync(new Uint8Array(64 * MEGABYTE)))),
      png.chunk('IDAT', [1, 2, 3]),
    ),
    says: DAMAGED,
  },
];

const JPEGS: BadPicture[] = [
  { name: 'cut-in-pixels.jpg', bytes: GOOD_JPEG.subarray(0, GOOD_JPEG.length - 12), says: EARLY },
  { name: 'cut-in-tables.jpg', bytes: GOOD_JPEG.subarray(0, 40), says: EARLY },
  {
    name: 'missing-middle.jpg',
    bytes: concat(GOOD_JPEG.subarray(0, GOOD_JPEG.length - 30), [0xff, 0xd9]),
    says: DAMAGED,
  },
  { name: 'only-a-start.jpg', bytes: Uint8Array.of(0xff, 0xd8, 0xff, 0xd9), says: /no picture in it/ },
  { name: 'garbage.jpg', bytes: concat([0xff, 0xd8, 0xff], ascii('nonsense')), says: EARLY },
  { name: 'not-segments.jpg', bytes: concat([0xff, 0xd8], adobe(0), ascii('nonsense')), says: DAMAGED },
  { name: 'huge.jpg', bytes: jpeg([[[1]]], { claim: [60_000, 60_000] }), says: TOO_LARGE },
  { name: 'lies-of-size.jpg', bytes: jpeg([[[1]]], { claim: [800, 800] }), says: DAMAGED },
  { name: 'no-size.jpg', bytes: jpeg([[[1]]], { claim: [8, 0] }), says: /8 x 0 px.*nothing in it/ },
  {
    name: 'too-many-scans.jpg',
    bytes: concat(SCANS.subarray(0, -2), ...Array(200).fill(SCANS.subarray(-13, -2)), SCANS.subarray(-2)),
    says: /too many scans/,
  },
  { name: '12-bit.jpg', bytes: jpeg([[[1]]], { precision: 12 }), says: /ordinary 8-bit JPEG/ },
  { name: 'two-components.jpg', bytes: jpeg([[[1, 2]]]), says: /ordinary 8-bit JPEG/ },
  {
    name: 'no-tables.jpg',
    bytes: concat(
      [0xff, 0xd8],
      segment(0xc0, [8, ...be16(8, 8), 1, 1, 0x11, 0]),
      segment(0xda, [1, 1, 0, 0, 63, 0]),
      [0, 0xff, 0xd9],
    ),
    says: DAMAGED,
  },
];

const TIFFS: BadPicture[] = [
  { name: 'cut.tif', bytes: GOOD_TIFF.subarray(0, GOOD_TIFF.length - 20), says: EARLY },
  { name: 'cut-pixels.tif', bytes: tiff(2, 2, [1, 2, 3, 4], { ...GREY_TAGS, 279: [5000] }), says: EARLY },
  { name: 'far-pixels.tif', bytes: tiff(2, 2, [1, 2, 3, 4], { ...GREY_TAGS, 273: [900_000] }), says: EARLY },
  { name: 'short-strip.tif', bytes: tiff(20, 20, [1, 2, 3, 4], GREY_TAGS), says: DAMAGED },
  {
    name: 'no-strips.tif',
    bytes: concat([0x49, 0x49, 42, 0], le32(8), directory({ ...GREY_TAGS, 256: [9], 257: [9] }, 8, 0)),
    says: DAMAGED,
  },
  { name: 'loop.tif', bytes: looped(), says: /run in a circle/ },
  { name: 'count-bomb.tif', bytes: countBomb(), says: EARLY },
  { name: 'no-pages.tif', bytes: concat([0x49, 0x49, 42, 0], le32(0)), says: /no picture in it/ },
  { name: 'huge.tif', bytes: tiff(60_000, 60_000, [1], GREY_TAGS), says: TOO_LARGE },
  { name: 'no-size.tif', bytes: tiff(0, 5, [1], GREY_TAGS), says: /0 x 5 px.*nothing in it/ },
  {
    name: 'float.tif',
    bytes: tiff(1, 1, [0, 0, 0, 0], { ...GREY_TAGS, 258: [32], 339: [3] }),
    says: /8 or 16 bits a channel/,
  },
  {
    name: 'lab.tif',
    bytes: tiff(1, 1, [1, 2, 3], { 258: [8, 8, 8], 259: [1], 262: [8], 277: [3] }),
    says: /grey, RGB or CMYK/,
  },
  {
    name: 'odd-inks.tif',
    bytes: tiff(1, 1, [1, 2, 3, 4], { 258: [8, 8, 8, 8], 259: [1], 262: [5], 277: [4], 332: [2] }),
    says: /grey, RGB or CMYK/,
  },
  {
    name: 'odd-compression.tif',
    bytes: tiff(2, 2, [1, 2, 3, 4], { ...GREY_TAGS, 259: [50_000] }),
    says: /compression is not read/,
  },
  { name: 'garbage-zip.tif', bytes: tiff(2, 2, [1, 2, 3, 4], { ...GREY_TAGS, 259: [8] }), says: DAMAGED },
  { name: 'garbage-lzw.tif', bytes: tiff(200, 200, [1, 2, 3, 4], { ...GREY_TAGS, 259: [5] }), says: DAMAGED },
  {
    name: 'zip-too-short.tif',
    bytes: tiff(64, 64, deflate([1, 2, 3]), { ...GREY_TAGS, 259: [8] }),
    says: DAMAGED,
  },
  {
    name: 'garbage-fax.tif',
    bytes: tiff(64, 64, [0x12, 0x34, 0x56, 0x78, 0, 0, 7], { 258: [1], 259: [4], 262: [0] }),
    says: DAMAGED,
  },
  {
    name: 'cut-fax.tif',
    bytes: tiff(8, 8, blackCornerG4().slice(0, 3), { 258: [1], 259: [4], 262: [0] }),
    says: DAMAGED,
  },
  { name: 'second-page-cut.tif', bytes: withPage(GOOD_TIFF, GREY_TAGS).subarray(0, -20), says: EARLY },
  {
    name: 'big.tif',
    bytes: concat([0x49, 0x49, 43, 0, 8, 0, 0, 0], le32(16, 0)),
    says: /BigTIFF is not read/,
  },
];

const WEBPS: BadPicture[] = [
  { name: 'cut.webp', bytes: GOOD_WEBP.subarray(0, GOOD_WEBP.length - 4), says: EARLY },
  { name: 'lies-of-size.webp', bytes: webp(canvas(0, 30, 30), riffChunk('VP8L', LOSSLESS)), says: DAMAGED },
  { name: 'huge.webp', bytes: webp(canvas(0, 60_000, 60_000), riffChunk('VP8L', LOSSLESS)), says: TOO_LARGE },
  { name: 'no-picture.webp', bytes: webp(riffChunk('ICCP', [1, 2])), says: /no picture in it/ },
  { name: 'only-a-canvas.webp', bytes: webp(canvas(0, 8, 8)), says: DAMAGED },
  {
    name: 'garbage.webp',
    bytes: webp(riffChunk('VP8 ', [1, 2, 3, 4, 5, 6, 7, 8, 9, 1])),
    says: /is damaged|megapixels/,
  },
  { name: 'short-pixels.webp', bytes: webp(riffChunk('VP8L', LOSSLESS.subarray(0, 8))), says: DAMAGED },
  { name: 'chunk-too-long.webp', bytes: webp(concat(ascii('VP8L'), le32(999), [0x2f])), says: EARLY },
];

const SVGS: BadPicture[] = [
  {
    name: 'broken.svg',
    bytes: svg('width="9mm" height="9mm"', '<g><path d="M0 0h9v9z"/>'),
    says: /the SVG is broken.*save it again$/,
  },
  {
    name: 'cut.svg',
    bytes: utf8('<svg xmlns="http://www.w3.org/2000/svg" width="9mm" hei'),
    says: /the SVG is broken/,
  },
  { name: 'no-namespace.svg', bytes: utf8('<svg width="9mm" height="9mm"/>'), says: /the SVG is broken/ },
  {
    name: 'not-utf8.svg',
    bytes: concat(svg('width="9mm" height="9mm"'), [0xff]),
    says: /encoding cannot be read/,
  },
  {
    name: 'page.svg',
    bytes: utf8('<!DOCTYPE html><html><body><svg/></body></html>'),
    says: /not an SVG picture/,
  },
  { name: 'no-size.svg', bytes: svg(''), says: /says no size/ },
  { name: 'per-cent.svg', bytes: svg('width="100%" height="100%"'), says: /says no size/ },
  { name: 'zero.svg', bytes: svg('width="0mm" height="9mm"'), says: /says its size is 0mm/ },
  { name: 'negative.svg', bytes: svg('width="9mm" height="-9mm"'), says: /says its size is -9mm/ },
  { name: 'hair.svg', bytes: svg('width="9mm" height="0.0001mm"'), says: /213 x 0 px.*nothing in it/ },
  { name: 'endless.svg', bytes: svg('width="1e999mm" height="9mm"'), says: /says its size is 1e999mm/ },
  { name: 'huge.svg', bytes: svg('width="1e30mm" height="1e30mm"'), says: /at most 120 megapixels/ },
  {
    name: 'wall.svg',
    bytes: svg('width="3m" height="3m" viewBox="0 0 99999 99999"'),
    says: /at most 120 megapixels/,
  },
  { name: 'thread.svg', bytes: svg('width="1e6mm" height="0.1mm"'), says: /at most 120 megapixels/ },
  {
    name: 'entities.svg',
    bytes: svg('width="9mm" height="9mm"', '<desc>&j;</desc>', nestedEntities()),
    says: /entities unfold/,
  },
  {
    name: 'long-entity.svg',
    bytes: svg(
      'width="9mm" height="9mm"',
      `<desc>${'&a;'.repeat(20_000)}</desc>`,
      `<!DOCTYPE svg [<!ENTITY a "${'a'.repeat(100_000)}">]>`,
    ),
    says: /entities unfold/,
  },
  {
    name: 'uses.svg',
    bytes: svg('width="9mm" height="9mm"', nestedUses()),
    says: /the SVG is broken \(nodes limit reached\)/,
  },
  {
    name: 'deep.svg',
    bytes: svg('width="9mm" height="9mm"', '<g>'.repeat(9000) + '</g>'.repeat(9000)),
    says: /the SVG is broken/,
  },
];

const OTHERS: BadPicture[] = [
  { name: 'empty.png', bytes: new Uint8Array(0), says: /the file is empty.*PNG, JPEG, WebP, TIFF and SVG/ },
  {
    name: 'letter.png',
    bytes: utf8('Dear printer, the drawing comes later.'),
    says: /not a picture.*PNG, JPEG, WebP, TIFF and SVG/,
  },
  { name: 'one-byte.jpg', bytes: Uint8Array.of(0xff), says: /not a picture/ },
  { name: 'moving.gif', bytes: utf8('GIF89a......'), says: /it is a GIF.*PNG, JPEG, WebP, TIFF and SVG/ },
  { name: 'layers.psd', bytes: utf8('8BPS......'), says: /it is a Photoshop document/ },
  { name: 'page.ai', bytes: utf8('%PDF-1.4'), says: /it is a PDF/ },
  { name: 'photo.heic', bytes: utf8('\0\0\0\x18ftypheic'), says: /it is a HEIC/ },
  { name: 'packed.svgz', bytes: Uint8Array.of(0x1f, 0x8b, 8, 0), says: /it is packed/ },
];

/** Every kind of picture file that must be refused; none may hang, fill memory or come out in part. */
export const badPictures: BadPicture[] = [...PNGS, ...JPEGS, ...TIFFS, ...WEBPS, ...SVGS, ...OTHERS];
