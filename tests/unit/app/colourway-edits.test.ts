import { describe, expect, it } from 'vitest';
import {
  addColourway,
  deleteColourway,
  duplicateColourway,
  renameColourway,
  showColourway,
} from '../../../src/app/panels/colourway-edits.ts';
import type { Job } from '../../../src/graph/job.ts';
import { defaultJob, reopened } from '../support/jobs.ts';

const start: Job = {
  ...defaultJob({}),
  colourways: [
    { id: 'a', name: 'Daylight', recipes: { r1: { soot: 40 } }, others: {} },
    { id: 'b', name: 'Dusk', recipes: {}, others: { straw: 20 } },
  ],
  colourway: 'a',
};
const names = (job: Job) => job.colourways.map(({ name }) => name);

describe('colourways', () => {
  it('are shown one at a time', () => {
    expect(showColourway(start, 'b').colourway).toBe('b');
    expect(showColourway(start, 'a')).toBe(start);
    expect(showColourway(start, 'gone')).toBe(start);
  });

  it('are added bare, under the next free letter, and shown', () => {
    const after = addColourway(start);
    expect(after.colourways.at(-1)).toEqual({ id: 'c', name: 'C', recipes: {}, others: {} });
    expect(after.colourway).toBe('c');
  });

  it('can be added to the limit of letters and beyond', () => {
    let job = start;
    for (let i = 0; i < 40; i++) job = addColourway(job);
    expect(new Set(names(job)).size).toBe(42);
    expect(reopened(job)).toEqual(job);
  });

  it('are copied beside themselves with all their recipes', () => {
    const after = duplicateColourway(start, 'a');
    expect(names(after)).toEqual(['Daylight', 'Daylight 2', 'Dusk']);
    expect(after.colourways[1]).toEqual({ ...start.colourways[0], id: 'c', name: 'Daylight 2' });
    expect(names(duplicateColourway(after, 'c'))).toEqual(['Daylight', 'Daylight 2', 'Daylight 3', 'Dusk']);
  });

  it('are renamed, but never to nothing', () => {
    expect(names(renameColourway(start, 'b', '  Night '))).toEqual(['Daylight', 'Night']);
    expect(renameColourway(start, 'b', '  ')).toBe(start);
    expect(renameColourway(start, 'b', 'Dusk')).toBe(start);
  });

  it('are deleted until one is left; a neighbour is shown then', () => {
    const after = deleteColourway(start, 'a');
    expect(names(after)).toEqual(['Dusk']);
    expect(after.colourway).toBe('b');
    expect(deleteColourway(after, 'b')).toBe(after);
    expect(deleteColourway(start, 'b').colourway).toBe('a');
  });
});
