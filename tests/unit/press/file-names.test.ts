import { expect, it } from 'vitest';
import { fileStem, patternProblem, plateFileStem } from '../../../src/press/file-names.ts';

const PARTS = {
  job: 'Seed tray: "May"',
  size: '20x30mm',
  order: '2',
  plate: 'brick',
  ink: 'Ziegelrot 接骨木',
  colourway: 'A/B',
  side: 'front',
};

it('fills a pattern in, each part without marks that file systems refuse', () => {
  expect(plateFileStem('{job}-{size}-{order}-{ink}', PARTS)).toBe('Seed-tray-May-20x30mm-2-Ziegelrot-接骨木');
  expect(plateFileStem('{colourway} {side} {plate}', PARTS)).toBe('A-B-front-brick');
});

it('is never empty and never leaves its folder', () => {
  expect(fileStem('../..')).toBe('untitled');
  expect(plateFileStem('../{plate}', { ...PARTS, plate: '..' })).toBe('untitled');
});

it('says which part there is not', () => {
  expect(patternProblem('{job}-{order}')).toBeNull();
  expect(patternProblem('{job}-{date}')).toMatch(/no \{date\}.*\{job\}/);
  expect(patternProblem('{job-{order}')).toMatch(/no \{job-|brace/);
});
