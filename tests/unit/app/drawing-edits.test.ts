import { describe, expect, it } from 'vitest';
import example from '../../../graphs-demo/artichoke-packet.json';
import { jobOfDrawing, withDrawing, withWidth } from '../../../src/app/files/drawing-edits.ts';
import { isSaved } from '../../../src/app/files/is-saved.ts';
import { STARTER_INKS } from '../../../src/app/files/starter-inks.ts';
import { freshFileName, plainFileName } from '../../../src/graph/assets.ts';
import { hashBytes } from '../../../src/graph/keys.ts';
import { reopened } from '../support/jobs.ts';

const ONE = hashBytes(Uint8Array.of(1));
const TWO = hashBytes(Uint8Array.of(2));

describe('a new job of a drawing', () => {
  it('is called after the file and opens again', () => {
    const job = jobOfDrawing('seed-packet_front.svg', ONE);
    expect(job.name).toBe('seed packet front');
    expect(job.assets).toEqual({ [ONE]: { file: 'seed-packet_front.svg' } });
    expect(reopened(job)).toEqual(job);
  });

  it('starts with the inks of the example and no recipes', () => {
    const inks = example.graph.nodes.find(({ kind }) => kind === 'ink-set')!.settings;
    expect(STARTER_INKS).toEqual(inks);
    expect(jobOfDrawing('a.svg', ONE).colourways).toEqual([{ id: 'a', name: 'A', recipes: {}, others: {} }]);
  });

  it.each(['../../etc/pass?wd', '.hidden', 'a'.repeat(300), '', '"quoted".svg', 'tab\there.png'])(
    'takes the file name %j in a form that every disk takes',
    (name) => expect(() => reopened(jobOfDrawing(name, ONE))).not.toThrow(),
  );
});

describe('another drawing in a job', () => {
  const before = withWidth(jobOfDrawing('a.svg', ONE), 120);

  it('takes the place of the first, at the same printed width, and regions stay known', () => {
    const known = { ...before, register: { ...before.register, next: 7 } };
    const after = withDrawing(known, 'b.svg', TWO);
    expect(after.assets).toEqual({ [TWO]: { file: 'b.svg' } });
    expect(after.graph.nodes[0]!.settings).toEqual({ asset: TWO, widthMm: 120 });
    expect(after.register).toBe(known.register);
  });

  it('may have the same name', () => {
    expect(withDrawing(before, 'a.svg', TWO).assets).toEqual({ [TWO]: { file: 'a.svg' } });
  });
});

describe('file names', () => {
  it('lose what disks refuse', () => {
    expect(plainFileName('a/b\\c:d*e?.png')).toBe('a-b-c-d-e-.png');
    expect(plainFileName('..png')).toBe('png');
    expect(plainFileName(`${'x'.repeat(200)}.svg`)).toHaveLength(120);
  });

  it('get a number when they are taken', () => {
    expect(freshFileName('a.svg', ['b.svg'])).toBe('a.svg');
    expect(freshFileName('a.svg', ['A.SVG', 'a 2.svg'])).toBe('a 3.svg');
  });
});

describe('a job', () => {
  const job = jobOfDrawing('a.svg', ONE);

  it('is saved as long as nothing was done to it; finding regions is no doing', () => {
    expect(isSaved({ ...job, register: { ...job.register, next: 9 } }, job)).toBe(true);
    expect(isSaved({ ...job, name: 'b' }, job)).toBe(false);
    expect(isSaved(job, null)).toBe(false);
  });
});
