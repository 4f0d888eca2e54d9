import { describe, expect, it } from 'vitest';
import { packJob, unpackJob } from '../../../src/graph/archive.ts';
import { BadInput } from '../../../src/graph/complaint.ts';
import { hashBytes } from '../../../src/graph/keys.ts';
import { parseJob } from '../../../src/graph/parse-job.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import { defaultJob } from '../support/jobs.ts';
import { sharedBytes } from '../support/pictures.ts';

const LINES = new TextEncoder().encode(`<svg>${'<path d="M0 0"/>'.repeat(200)}</svg>`);
const HASH = hashBytes(LINES);
const FILES = new Map([[HASH, LINES]]);
const jobIn = (file: string) => ({ ...defaultJob({ asset: HASH }), assets: { [HASH]: { file } } });

describe('a packed job', () => {
  it('opens as the job it was, with the bytes of its files', () => {
    const job = jobIn('lines.svg');
    const { text, assets } = unpackJob(packJob(job, FILES));
    expect(parseJob(text, nodeKinds)).toEqual(job);
    expect([...assets]).toEqual([['lines.svg', LINES]]);
  });

  it('is the same bytes whenever it is packed', () => {
    expect(packJob(jobIn('lines.svg'), FILES)).toEqual(packJob(jobIn('lines.svg'), new Map(FILES)));
  });

  it('keeps pictures that are compressed already as they are, and packs the rest smaller', () => {
    const asPng = packJob(jobIn('lines.png'), FILES);
    const asSvg = packJob(jobIn('lines.svg'), FILES);
    expect(asPng.length - asSvg.length).toBeGreaterThan(LINES.length * 0.8);
  });

  it('takes files that stand on shared memory', () => {
    const shared = sharedBytes(LINES.length);
    shared.set(LINES);
    const packed = packJob(jobIn('lines.svg'), new Map([[HASH, shared]]));
    expect(packed).toEqual(packJob(jobIn('lines.svg'), FILES));
  });

  it('leaves out files that no node uses any more', () => {
    const job = jobIn('lines.svg');
    const old = hashBytes(Uint8Array.of(1));
    const packed = unpackJob(
      packJob({ ...job, assets: { ...job.assets, [old]: { file: 'old.svg' } } }, FILES),
    );
    expect(parseJob(packed.text, nodeKinds)).toEqual(job);
  });

  it('gives two files of one name two names, whatever their case', () => {
    const other = Uint8Array.of(1, 2, 3);
    const job = jobIn('Lines.svg');
    const twice = {
      ...job,
      graph: {
        ...job.graph,
        nodes: [
          ...job.graph.nodes,
          { id: 'more', kind: 'line-drawing', settings: { asset: hashBytes(other) }, bypassed: false },
        ],
      },
      assets: { ...job.assets, [hashBytes(other)]: { file: 'lines.svg' } },
    };
    const { text, assets } = unpackJob(packJob(twice, new Map([...FILES, [hashBytes(other), other]])));
    const opened = parseJob(text, nodeKinds);
    expect(assets.get(opened.assets[HASH]!.file)).toEqual(LINES);
    expect(assets.get(opened.assets[hashBytes(other)]!.file)).toEqual(other);
  });

  it('is refused while a file it uses is missing', () => {
    expect(() => packJob(jobIn('lines.svg'), new Map())).toThrow(BadInput);
    expect(() => packJob(jobIn('lines.svg'), new Map())).toThrow(/lines\.svg of this job is missing/);
  });
});
