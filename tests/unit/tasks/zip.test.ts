import { unzipSync } from 'fflate';
import { expect, it } from 'vitest';
import { zip } from '../../../workers/tasks/zip.ts';

it('packs files as they are, into the same bytes for the same files', async () => {
  const files = [{ name: 'plate.png', bytes: Uint8Array.of(1, 2, 3) }];
  const [first, second] = [await zip({ files }), await zip({ files })];
  expect(unzipSync(first.files[0]!.bytes)).toEqual({ 'plate.png': Uint8Array.of(1, 2, 3) });
  expect(first).toEqual(second);
});
