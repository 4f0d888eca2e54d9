import { describe, expect, it } from 'vitest';
import { kindOfFile, readJobFile } from '../../../src/app/files/read-job-file.ts';
import { packJob } from '../../../src/graph/archive.ts';
import { hashBytes } from '../../../src/graph/keys.ts';
import { defaultJob } from '../support/jobs.ts';

const LINES = new TextEncoder().encode('<svg/>');
const HASH = hashBytes(LINES);
const job = { ...defaultJob({ asset: HASH }), assets: { [HASH]: { file: 'lines.svg' } } };
const json = new TextEncoder().encode(JSON.stringify(job));
const alone = new Map<string, Uint8Array>();

describe('a file that comes in', () => {
  it.each([
    ['an archive', packJob(job, new Map([[HASH, LINES]])), 'archive'],
    ['the text of a job', json, 'text'],
    ['a drawing', LINES, 'picture'],
    ['nothing at all', new Uint8Array(), 'picture'],
  ])('is told by its first bytes: %s', (_, bytes, kind) => {
    expect(kindOfFile(bytes)).toBe(kind);
  });

  it('brings its files along when it is an archive', () => {
    const { files } = readJobFile(packJob(job, new Map([[HASH, LINES]])), alone);
    expect(files).toEqual([{ hash: HASH, asset: { name: 'lines.svg', bytes: LINES } }]);
  });

  it('needs its files beside it when it is the text of a job, and says which', () => {
    expect(() => readJobFile(json, alone)).toThrow(/needs lines\.svg from its folder assets; choose both/);
    expect(readJobFile(json, new Map([['lines.svg', LINES]])).files).toHaveLength(1);
  });

  it('is refused with another file of the same name beside it', () => {
    expect(() => readJobFile(json, new Map([['lines.svg', json]]))).toThrow(/lines\.svg is not the file/);
  });
});
