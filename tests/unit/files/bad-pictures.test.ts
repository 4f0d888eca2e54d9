import { expect, test } from 'vitest';
import { BadFile } from '../../../workers/files/bad-file.ts';
import { decodePicture } from '../../../workers/files/decode.ts';
import { inspectPicture } from '../../../workers/files/inspect.ts';
import { badPictures } from './bad-pictures.ts';

async function open(bytes: Uint8Array, name: string): Promise<void> {
  const head = await inspectPicture(bytes, name, { vectorPpi: 600 });
  await decodePicture(bytes, name, head, new Uint8Array(head.width * head.height * head.bands));
}

test.each(badPictures)('$name is refused with one line', async ({ name, bytes, says }) => {
  const refusal = await open(bytes, name).then(
    () => null,
    (error: unknown) => error,
  );
  expect(refusal).toBeInstanceOf(BadFile);
  const { message } = refusal as BadFile;
  expect(message).toMatch(says);
  expect(message.startsWith(`${name}: `)).toBe(true);
  expect(message.split(name)).toHaveLength(2);
  expect(message).not.toMatch(/\n|\.$/);
});

test('a file of more than 512 MB is refused unread', async () => {
  await expect(open(new Uint8Array(512 * 1024 * 1024 + 1), 'scan.tif')).rejects.toThrow(
    /^scan\.tif: .*over 512 MB/,
  );
});

test('a name with line breaks still makes one line', async () => {
  await expect(open(new Uint8Array(0), 'two\nlines.png')).rejects.toThrow(
    /^two lines\.png: the file is empty[^\n]*$/,
  );
});

test('a target of another size is a mistake of the caller', async () => {
  const { bytes } = badPictures.find(({ name }) => name === 'too-few-pixels.png')!;
  const head = await inspectPicture(bytes, 'a.png', { vectorPpi: 600 });
  await expect(decodePicture(bytes, 'a.png', head, new Uint8Array(3))).rejects.not.toBeInstanceOf(BadFile);
});
