import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Bench } from '../support/engine.ts';
import { colourPng } from '../support/files.ts';
import { defaultJob, type Settings } from '../support/jobs.ts';
import { randomOf } from '../support/random.ts';

const WIDTH = 300;
const HEIGHT = 240;
type Colour = readonly [number, number, number];

const WHITE: Colour = [255, 255, 255];
const BLACK: Colour = [12, 12, 12];
const KRAFT: Colour = [190, 150, 110];
const CREAM: Colour = [245, 230, 195];

let bench: Bench;
beforeAll(() => {
  bench = new Bench();
});
afterAll(() => bench.close());

/** Which of the inks a pixel is drawn in, -1 for none: strokes of 5 px by turns, none of them near another. */
function inkAt(x: number, y: number, inks: number): number {
  const at = Math.round(y + 8 * Math.sin(x / 30)) % 36;
  if (x < 15 || x >= WIDTH - 15 || at < 15 || at >= 20) return -1;
  return Math.floor((y + 8 * Math.sin(x / 30)) / 36) % inks;
}

interface Sheet {
  inks: Colour[];
  paper: (x: number, y: number) => Colour;
}

/** What comes out of Clean line of a sheet scanned with some noise: share of each ink that is line, and of the rest. */
async function linesOf({ inks, paper }: Sheet, settings: Settings = {}) {
  const random = randomOf(7);
  const png = colourPng(WIDTH, HEIGHT, (x, y) => {
    const ink = inkAt(x, y, inks.length);
    const colour = ink < 0 ? paper(x, y) : inks[ink]!;
    return [...colour.map((value) => Math.min(255, Math.max(0, Math.round(value + 8 * random() - 4)))), 255];
  });
  const job = defaultJob({ asset: bench.asset('sheet.png', png), ppi: 300, ...settings });
  const { value, complaints } = await bench.evaluate(job, 'clean-line.drawing', 'drawing');
  const line = new Array<number>(inks.length + 1).fill(0);
  const all = line.slice();
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++) {
      const ink = inkAt(x, y, inks.length);
      const slot = ink < 0 ? inks.length : ink;
      all[slot]!++;
      if (value.line.data[y * WIDTH + x]! >= 128) line[slot]!++;
    }
  const shares = line.map((count, slot) => count / all[slot]!);
  return { inks: shares.slice(0, -1), rest: shares.at(-1)!, codes: complaints.map(({ code }) => code) };
}

const on = (paper: Colour) => () => paper;
const blot =
  (wash: Colour, radius = 100) =>
  (x: number, y: number) =>
    Math.hypot(x - 150, y - 120) < radius ? wash : WHITE;

describe('every line of a drawing in colour is line, and nothing else is', () => {
  it.each([
    ['black on white', [BLACK], on(WHITE)],
    [
      'blue and red pencil',
      [
        [60, 90, 200],
        [215, 60, 50],
      ],
      on(WHITE),
    ],
    ['blue and red pencil beside black', [BLACK, [60, 90, 200], [215, 60, 50]], on(WHITE)],
    ['pale cyan and yellow beside black', [BLACK, [150, 230, 240], [250, 225, 60]], on(WHITE)],
    ['pale cyan', [[150, 230, 240]], on(WHITE)],
    ['pencil grey', [[120, 120, 120]], on([250, 250, 250])],
    ['black on kraft', [[30, 25, 20]], on(KRAFT)],
    [
      'black and red on kraft',
      [
        [30, 25, 20],
        [170, 40, 35],
      ],
      on(KRAFT),
    ],
    ['black on yellowed paper', [BLACK], on(CREAM)],
    ['black and blue on yellowed paper', [BLACK, [70, 100, 190]], on(CREAM)],
    ['black over a light yellow wash', [BLACK], blot([255, 235, 170])],
    ['black over a light blue wash', [BLACK], blot([195, 215, 240])],
    ['black over a strong orange wash', [BLACK], blot([250, 200, 120])],
    ['black and red over a wash', [BLACK, [215, 60, 50]], blot([255, 235, 170])],
    ['pencil grey over a wash on cream', [[110, 110, 115]], blot([235, 225, 200])],
  ] as [string, Colour[], Sheet['paper']][])('%s', async (_, inks, paper) => {
    const found = await linesOf({ inks, paper });
    for (const share of found.inks) expect(share).toBeGreaterThan(0.98);
    expect(found.rest).toBeLessThan(0.002);
  });

  it('black with a solid black area: the solid stays', async () => {
    const { rest } = await linesOf({ inks: [BLACK], paper: blot([14, 12, 10], 60) });
    const solid = (Math.PI * 60 ** 2 * (1 - 5 / 36)) / (WIDTH * HEIGHT * (1 - 5 / 36));
    expect(rest).toBeCloseTo(solid, 1);
    expect(rest).toBeGreaterThan(0.95 * solid);
  });
});

describe('pale pencil beside black line', () => {
  const sketch: Sheet = { inks: [BLACK, [150, 205, 250]], paper: on(WHITE) };

  it('is line, with a note that says how to leave it out', async () => {
    const { codes } = await linesOf(sketch);
    expect(codes).toContain('coloured-line');
    expect((await linesOf({ ...sketch, inks: [BLACK] })).codes).not.toContain('coloured-line');
  });

  it('is left out by darkness', async () => {
    const { inks, codes } = await linesOf(sketch, { channel: 'darkness' });
    expect(inks[0]).toBeGreaterThan(0.98);
    expect(inks[1]).toBeLessThan(0.02);
    expect(codes).not.toContain('coloured-line');
  });

  it('and a wash both count where a person chooses colour', async () => {
    const wash = await linesOf({ inks: [BLACK], paper: blot([255, 225, 60]) }, { channel: 'colour' });
    expect(wash.rest).toBeGreaterThan(0.3);
  });
});
