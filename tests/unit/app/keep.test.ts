import { describe, expect, it } from 'vitest';
import { snapshotOf, surplus } from '../../../src/app/files/keep.ts';
import { hashBytes } from '../../../src/graph/keys.ts';
import type { Asset } from '../../../workers/client.ts';
import { defaultJob, reopened } from '../support/jobs.ts';
import { sharedBytes } from '../support/pictures.ts';

const shared = sharedBytes(3);
shared.set([1, 2, 3]);
const HASH = hashBytes(shared);
const rest = { id: 'x', savedAt: 5, thumbnail: null, handle: null, inFile: false };

describe('what a browser keeps of a job', () => {
  const job = defaultJob({ asset: HASH });
  const asset = { name: 'lines.png', bytes: shared };
  const unused = { name: 'undone.png', bytes: Uint8Array.of(9) };
  const files = new Map<string, Asset>([
    [HASH, asset],
    ['undone', unused],
  ]);
  const snapshot = snapshotOf(job, files, rest);

  it('is the document as text, from which it opens again', () => {
    expect(JSON.parse(snapshot.record.text)).toEqual(reopened(job));
    expect(snapshot.record.name).toBe('Sampler');
  });

  it('is the files in use alone, copied off shared memory', () => {
    expect(snapshot.record.files).toEqual([HASH]);
    expect(snapshot.files).toEqual([{ hash: HASH, name: 'lines.png', bytes: Uint8Array.of(1, 2, 3) }]);
    expect(snapshot.files[0]!.bytes.buffer).toBeInstanceOf(ArrayBuffer);
  });

  it('goes when twelve newer jobs are kept, with the files that no other job needs', () => {
    const jobs = Array.from({ length: 14 }, (_, i) => ({ id: `j${i}`, files: [`f${i}`, 'shared'] }));
    const files = [...jobs.map((_, i) => `f${i}`), 'shared', 'left over'];
    expect(surplus(jobs, files)).toEqual({ jobs: ['j12', 'j13'], files: ['f12', 'f13', 'left over'] });
  });

  it('is left alone while there is room', () => {
    expect(surplus([{ id: 'a', files: ['f'] }], ['f'])).toEqual({ jobs: [], files: [] });
  });
});
