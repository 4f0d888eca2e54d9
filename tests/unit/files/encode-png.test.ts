import { PNG } from 'pngjs';
import { expect, test } from 'vitest';
import { encodeLabelsPng, encodePng } from '../../../workers/files/encode-png.ts';
import { read } from './read.ts';

/** The chunks of a PNG before its pixels, by type. */
function chunks(file: Uint8Array): Map<string, Uint8Array> {
  const view = new DataView(file.buffer, file.byteOffset);
  const found = new Map<string, Uint8Array>();
  for (let at = 8; at < file.length; at += 12 + view.getUint32(at)) {
    found.set(
      String.fromCharCode(...file.subarray(at + 4, at + 8)),
      file.subarray(at + 8, at + 8 + view.getUint32(at)),
    );
  }
  return found;
}

const decode = (file: Uint8Array) => PNG.sync.read(Buffer.from(file), { checkCRC: true });

test('writes grey that another program reads back', async () => {
  const data = Uint8Array.of(0, 64, 128, 192, 255, 1);
  const file = await encodePng({ width: 3, height: 2, bands: 1, data, ppi: 600 });
  const back = decode(file);
  expect([back.width, back.height]).toEqual([3, 2]);
  expect([...back.data.filter((_, i) => i % 4 === 0)]).toEqual([...data]);
  expect([...chunks(file).get('IHDR')!.subarray(8)]).toEqual([8, 0, 0, 0, 0]);
});

test.each([3, 4] as const)('writes %i bands that another program reads back', async (bands) => {
  const data = Uint8Array.from([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12].slice(0, bands * 3));
  const back = decode(await encodePng({ width: 1, height: 3, bands, data, ppi: 300 }));
  const wanted = [0, 1, 2].map((i) => [
    ...data.slice(i * bands, i * bands + 3),
    bands === 4 ? data[i * 4 + 3]! : 255,
  ]);
  expect([...back.data]).toEqual(wanted.flat());
});

test.each([
  [600, 23622],
  [1200, 47244],
  [300, 11811],
  [72, 2835],
])('writes %i ppi as whole pixels per metre', async (ppi, perMetre) => {
  const file = await encodePng({ width: 1, height: 1, bands: 1, data: Uint8Array.of(7), ppi });
  const phys = chunks(file).get('pHYs')!;
  const view = new DataView(phys.buffer, phys.byteOffset);
  expect([view.getUint32(0), view.getUint32(4), view.getUint8(8)]).toEqual([perMetre, perMetre, 1]);
});

test('marks sRGB only where it is told to, and writes nothing about itself', async () => {
  const picture = { width: 1, height: 1, bands: 3 as const, data: Uint8Array.of(1, 2, 3), ppi: 300 };
  expect([...chunks(await encodePng(picture)).keys()]).toEqual(['IHDR', 'pHYs', 'IDAT', 'IEND']);
  const marked = await encodePng({ ...picture, srgb: true });
  expect([...chunks(marked).keys()]).toEqual(['IHDR', 'sRGB', 'pHYs', 'IDAT', 'IEND']);
  expect([...decode(marked).data]).toEqual([1, 2, 3, 255]);
});

test('takes pixels on shared memory', async () => {
  const data = new Uint8Array(new SharedArrayBuffer(2));
  data.set([9, 250]);
  const file = await encodePng({ width: 2, height: 1, bands: 1, data, ppi: 600 });
  expect((await read(file)).pixels).toEqual([9, 250]);
});

test('reads its own pictures back unchanged', async () => {
  const data = Uint8Array.from({ length: 300 * 70 * 4 }, (_, i) => (i * i * 7) % 256);
  const picture = await read(
    await encodePng({ width: 300, height: 70, bands: 4, data, ppi: 600, srgb: true }),
  );
  expect(picture.ppi!.x).toBeCloseTo(600, 2);
  expect(picture.pixels).toEqual([...data]);
});

test('refuses data of another size', async () => {
  const data = new Uint8Array(5);
  await expect(encodePng({ width: 2, height: 2, bands: 1, data, ppi: 600 })).rejects.toThrow(
    /width \* height/,
  );
});

test('writes fewer than 65,536 labels as 16-bit grey', async () => {
  const file = await encodeLabelsPng(Uint32Array.of(0, 1, 300, 65_535), 2, 2, 600, 65_535);
  expect([...chunks(file).get('IHDR')!.subarray(8, 10)]).toEqual([16, 0]);
  const back = PNG.sync.read(Buffer.from(file), { skipRescale: true });
  const values = new Uint16Array(back.data as unknown as ArrayLike<number>);
  expect([...values.filter((_, i) => i % 4 === 0)]).toEqual([0, 1, 300, 65_535]);
});

test('writes more labels as RGB, the lowest byte red', async () => {
  const file = await encodeLabelsPng(Uint32Array.of(0, 1, 0x010203, 65_536), 4, 1, 600, 70_000);
  expect([...chunks(file).get('IHDR')!.subarray(8, 10)]).toEqual([8, 2]);
  expect([...decode(file).data]).toEqual([0, 0, 0, 255, 1, 0, 0, 255, 3, 2, 1, 255, 0, 0, 1, 255]);
});
