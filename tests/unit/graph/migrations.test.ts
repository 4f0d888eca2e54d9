import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { BadInput } from '../../../src/graph/complaint.ts';
import { JOB_VERSION } from '../../../src/graph/job.ts';
import { MIGRATIONS, type Migration, migrate, type RawJob } from '../../../src/graph/migrations.ts';
import { parseJob } from '../../../src/graph/parse-job.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';

/** Steps that write down that they ran. */
const note =
  (name: string): Migration =>
  (job) => {
    (job.steps as string[]).push(name);
    return job;
  };
const STEPS = { 1: note('1 to 2'), 2: note('2 to 3'), 3: note('3 to 4') };

const old = (version: unknown): RawJob => ({ version, steps: [], inner: { kept: true } });

describe('migrate', () => {
  it('runs the steps from the version of the job to the newest, in order, each once', () => {
    expect(migrate(old(1), STEPS, 4)).toEqual({
      version: 4,
      steps: ['1 to 2', '2 to 3', '3 to 4'],
      inner: { kept: true },
    });
    expect(migrate(old(3), STEPS, 4)).toMatchObject({ version: 4, steps: ['3 to 4'] });
  });

  it('leaves the newest as it is', () => {
    expect(migrate(old(4), STEPS, 4)).toEqual(old(4));
  });

  it('does not touch the job it was given', () => {
    const job = old(1);
    const lifted = migrate(job, STEPS, 4);
    expect(job).toEqual(old(1));
    expect(lifted.inner).not.toBe(job.inner);
  });

  it('counts the version itself, whatever a step says', () => {
    const forgetful = { 1: () => ({ version: 1, name: 'renewed' }) };
    expect(migrate(old(1), forgetful, 2)).toEqual({ version: 2, name: 'renewed' });
  });

  it('refuses a job from a newer Keyblock and says to update', () => {
    expect(() => migrate(old(5), STEPS, 4)).toThrow(BadInput);
    expect(() => migrate(old(5), STEPS, 4)).toThrow(/version 5, this one reads up to 4.*update/);
  });

  it('refuses a job older than its oldest step', () => {
    expect(() => migrate(old(0), STEPS, 4)).toThrow(BadInput);
    expect(() => migrate(old(-1), STEPS, 4)).toThrow(/version -1 cannot be opened/);
  });

  it.each([undefined, null, '1', 1.5, Number.NaN, [1]])('refuses %o as a version', (version) => {
    expect(() => migrate(old(version), STEPS, 4)).toThrow(/no version number/);
  });

  it('has a step for every version there ever was, and none more', () => {
    const versions = Array.from({ length: JOB_VERSION - 1 }, (_, i) => String(i + 1));
    expect(Object.keys(MIGRATIONS)).toEqual(versions);
  });
});

describe('a job that version 1 saved', () => {
  const text = readFileSync(new URL('job-version-1.json', import.meta.url), 'utf8');

  it('opens for ever', () => {
    const job = parseJob(text, nodeKinds);
    expect(job.version).toBe(JOB_VERSION);
    expect(job.name).toBe('Harvest packet');
    expect(job.colourway).toBe('dusk');
  });

  it('keeps every recipe and every remembered region', () => {
    const job = parseJob(text, nodeKinds);
    expect(job.colourways.map(({ id, recipes }) => [id, Object.keys(recipes)])).toEqual([
      ['day', ['r1', 'leaf']],
      ['dusk', ['r1']],
    ]);
    expect(job.register.regions.map(({ id }) => id)).toEqual(['r1', 'leaf', 'r4']);
    expect(job.register.next).toBe(6);
  });
});
