import { afterAll, describe, expect, it } from 'vitest';
import { badPictures } from '../files/bad-pictures.ts';
import { badJobs } from './bad-jobs.ts';
import { GOOD_SVG, svgOf } from './drawings.ts';
import { keyblock, type Outcome, Scratch } from './run.ts';

const scratch = new Scratch();
const GIGABYTE = 1024 ** 3;

/** One line that begins with the file, exit 2, little memory, and nothing written. */
function refused(
  { code, stdout, stderr, peakBytes }: Outcome,
  file: string,
  says: RegExp,
  out: string,
): void {
  const line = stderr.trimEnd();
  expect(line).toMatch(says);
  expect(line.startsWith(`keyblock: ${file}: `), line).toBe(true);
  expect(line.split('\n')).toHaveLength(1);
  expect(code).toBe(2);
  expect(stdout).toBe('');
  expect(peakBytes).toBeLessThan(GIGABYTE);
  expect(scratch.list(out)).toEqual([]);
}

afterAll(() => scratch.remove());

describe.concurrent('a job that cannot be rendered is refused with one line', () => {
  it.for(badJobs)('$name', async ({ name, text, says }, { expect: _ }) => {
    const path = scratch.file(name, text);
    const out = `out-${name}`;
    refused(await keyblock('render', path, '--out', `${scratch.path}/${out}`), path, says, out);
  });
});

/** The worst of each format, through the whole command line; the table of files holds the rest. */
const WORST = badPictures.filter(({ name }) => /bomb|truncated|60000|loop|early|huge/.test(name)).slice(0, 8);

const DRAWINGS = [
  ...WORST,
  {
    name: 'one-pixel.svg',
    bytes: svgOf('0.04mm', '<path d="M0 0h9"/>'),
    says: /only 1 x 1 px; a drawing needs at least 16/,
  },
  { name: 'blank.svg', bytes: svgOf('10mm', ''), says: /no line in it/ },
  { name: 'white.svg', bytes: svgOf('10mm', '<path fill="#fff" d="M0 0h9v9z"/>'), says: /no line in it/ },
  { name: 'black.svg', bytes: svgOf('10mm', '<path d="M0 0h10v10H0z"/>'), says: /all line/ },
];

describe.concurrent('a drawing that cannot be used is refused with one line', () => {
  it.for(DRAWINGS)('$name', async ({ name, bytes, says }) => {
    const path = scratch.file(name, bytes);
    const out = `out-${name}`;
    refused(await keyblock('regions', path, '--out', `${scratch.path}/${out}`), path, says, out);
  });
});

describe.concurrent('wrong use is answered with one line and exit 2', () => {
  const good = scratch.file('good.svg', GOOD_SVG);
  const uses: [string, string[], RegExp][] = [
    ['no command', [], /there is no command ""; choose among render/],
    ['another command', ['paint'], /there is no command "paint"/],
    ['no job', ['render'], /0 files given, 1 expected. Usage: keyblock render JOB/],
    ['an unknown option', ['render', 'a.json', '--fast'], /'--fast'.*Usage/],
    ['an unknown format', ['render', 'a.json', '--formats', 'png,psd'], /no format "psd"; choose among png/],
    ['no workers', ['render', 'a.json', '--workers', '0'], /--workers takes a number from 1 to 64, not "0"/],
    [
      'a gap that is no number',
      ['regions', good, '--gap', 'wide', '--out', 'x'],
      /--gap takes a number from 0 to 5, not "wide"/,
    ],
    ['no folder', ['regions', good], /--out is missing/],
    [
      'a file that is not there',
      ['regions', 'nowhere.png', '--out', 'x'],
      /nowhere.png: there is no such file/,
    ],
    ['a folder for a file', ['render', scratch.path], /this is a folder/],
    [
      'a file for a folder',
      ['regions', good, '--out', good],
      /cannot write to .*good.svg \(EEXIST\); choose another --out/,
    ],
  ];
  it.for(uses)('%s', async ([, args, says]) => {
    const { code, stdout, stderr } = await keyblock(...args);
    expect(stderr).toMatch(says);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    expect([code, stdout]).toEqual([2, '']);
  });
});
