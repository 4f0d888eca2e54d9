import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { unpackJob } from '../../../src/graph/archive.ts';
import { BadInput } from '../../../src/graph/complaint.ts';

const JOB = strToU8('{"format":"keyblock-job"}');

describe('a .keyblock archive', () => {
  it('gives the text of its job and the files of its assets by name', () => {
    const zip = zipSync({ 'job.json': JOB, assets: { 'lines.svg': strToU8('<svg/>') } });
    const { text, assets } = unpackJob(zip);
    expect(text).toBe('{"format":"keyblock-job"}');
    expect([...assets]).toEqual([['lines.svg', strToU8('<svg/>')]]);
  });

  it('may lie under no other name, and other files in it are left alone', () => {
    const zip = zipSync({ 'job.json': JOB, 'notes.txt': strToU8('x'), other: { 'job.json': strToU8('{}') } });
    expect(unpackJob(zip).assets.size).toBe(0);
    expect(unpackJob(zip).text).toBe('{"format":"keyblock-job"}');
  });

  it.each([
    ['holds no job', zipSync({ 'assets/lines.svg': strToU8('<svg/>') }), /no job\.json/],
    ['is cut off', zipSync({ 'job.json': JOB }).slice(0, 40), /damaged/],
    ['is no archive', strToU8('PK, said the printer'), /damaged/],
    ['is empty', new Uint8Array(), /damaged/],
  ])('is refused when it %s', (_, zip, line) => {
    expect(() => unpackJob(zip)).toThrow(BadInput);
    expect(() => unpackJob(zip)).toThrow(line);
  });

  it('is refused when it says that a file unpacks to more than half a gigabyte', () => {
    const zip = zipSync({ 'job.json': JOB }, { level: 0 });
    const view = new DataView(zip.buffer);
    const central = zip.findLastIndex(
      (_, at) => at + 4 <= zip.length && view.getUint32(at, true) === 0x02014b50,
    );
    view.setUint32(central + 24, 0x20000001, true);
    expect(() => unpackJob(zip)).toThrow(/"job\.json" in the archive is too large/);
  });
});
