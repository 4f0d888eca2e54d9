import { describe, expect, it } from 'vitest';
import { type Channel, coverage, PLAIN, type Reading } from '../../../workers/kernels/coverage.ts';
import { hueSlot, SLOTS } from '../../../workers/kernels/hue.ts';
import { surveyLine } from '../../../workers/kernels/survey-line.ts';
import { flatPlane } from '../support/pictures.ts';

type Bands = 1 | 2 | 3 | 4;
const EVERY_HUE = new Uint8Array(SLOTS).fill(255);

function lineOf(pixels: number[][], channel: Channel, reading: Partial<Reading> = {}): number[] {
  const bands = pixels[0]!.length as Bands;
  const line = flatPlane(pixels.length, 1, 9);
  const all = { ...PLAIN, full: EVERY_HUE, ...reading, channel };
  coverage({ pixels: Uint8Array.from(pixels.flat()), bands, reading: all, line }, 0, 1);
  return [...line.data];
}

/** The survey of pixels in rows of `width`; of one row when it is left out. */
const surveyOf = (pixels: number[][], width = pixels.length) =>
  surveyLine({
    pixels: Uint8Array.from(pixels.flat()),
    bands: pixels[0]!.length as Bands,
    width,
    broad: 4,
  });
const hueOf = (pixel: number[]) => hueSlot(pixel[0]!, pixel[1]!, pixel[2]!);

const sheet = (paper: number[], ...marks: number[][]) => [...Array<number[]>(100).fill(paper), ...marks];
const times = (count: number, pixel: number[]) => Array<number[]>(count).fill(pixel);

describe('coverage', () => {
  it('is darkness, for grey', () => {
    expect(lineOf([[255], [0], [100]], 'darkness')).toEqual([0, 255, 155]);
  });

  it('is darkness times opacity, for grey with transparency', () => {
    const pixels = [
      [0, 255],
      [0, 128],
      [0, 0],
      [255, 255],
      [55, 51],
    ];
    expect(lineOf(pixels, 'darkness')).toEqual([255, 128, 0, 0, 40]);
  });

  it('is nothing where all is transparent, whatever colour lies there', () => {
    for (const channel of ['darkness', 'colour', 'transparency'] as const)
      expect(lineOf([[0, 0, 0, 0]], channel)).toEqual([0]);
  });

  it('of colours is the darkness the eye sees: blue dark, yellow light', () => {
    const [black, white, blue, yellow] = lineOf(
      [
        [0, 0, 0],
        [255, 255, 255],
        [0, 0, 255],
        [255, 255, 0],
      ],
      'darkness',
    );
    expect([black, white]).toEqual([255, 0]);
    expect(blue).toBeGreaterThan(200);
    expect(yellow).toBeLessThan(30);
  });

  it('by colour is how far the weakest of red, green and blue falls from white', () => {
    const pixels = [
      [255, 255, 0],
      [0, 0, 0],
      [255, 255, 255],
      [255, 200, 220],
    ];
    expect(lineOf(pixels, 'colour')).toEqual([255, 255, 0, 55]);
  });

  it('by transparency is opacity, whatever the colour', () => {
    const pixels = [
      [255, 255, 255, 255],
      [0, 0, 0, 80],
    ];
    expect(lineOf(pixels, 'transparency')).toEqual([255, 80]);
  });

  it('of a hue that has its own full strength is raised to it, of any other it is darkness', () => {
    const full = new Uint8Array(SLOTS);
    full[hueOf([155, 205, 255])] = 100;
    const pixels = [
      [155, 205, 255],
      [205, 230, 255],
      [255, 255, 0],
      [0, 0, 0],
    ];
    expect(lineOf(pixels, 'colour', { full })).toEqual([255, 128, 19, 255]);
  });

  it('is never less than darkness', () => {
    expect(lineOf([[0, 0, 90]], 'colour')).toEqual(lineOf([[0, 0, 90]], 'darkness'));
  });

  it('of a tinted sheet is nothing, and of what is lighter than the sheet', () => {
    const paper = [255, 200, 150] as const;
    for (const channel of ['darkness', 'colour'] as const)
      expect(
        lineOf(
          [
            [255, 200, 150],
            [255, 255, 255],
            [0, 0, 0],
          ],
          channel,
          { paper },
        ),
      ).toEqual([0, 0, 255]);
    expect(lineOf([[128, 100, 75]], 'darkness', { paper })).toEqual([128]);
  });

  it('on a white sheet is to the bit what the weighted sum of red, green and blue falls from white', () => {
    const pixels = Array.from({ length: 3000 }, (_, i) => [(i * 7) % 256, (i * 31) % 256, (i * 113) % 256]);
    expect(lineOf(pixels, 'darkness')).toEqual(
      pixels.map(([r, g, b]) => 255 - ((54 * r! + 183 * g! + 19 * b! + 128) >> 8)),
    );
  });
});

describe('the survey of a line', () => {
  const WHITE = [255, 255, 255];
  const BLACK = [0, 0, 0];
  const PALE_BLUE = [155, 205, 255];

  it('reads black by darkness: grey, on white, on transparency', () => {
    expect(surveyOf(sheet([255], ...times(20, [0])))).toMatchObject(PLAIN);
    expect(surveyOf(sheet([0, 0], ...times(20, [0, 255])))).toMatchObject(PLAIN);
    expect(surveyOf(sheet(WHITE, ...times(20, BLACK)))).toMatchObject(PLAIN);
    expect(surveyOf(sheet([0, 0, 0, 0], ...times(20, [0, 0, 0, 255])))).toMatchObject(PLAIN);
  });

  it('reads pure yellow by its colour, in full', () => {
    const found = surveyOf(sheet(WHITE, ...times(20, [255, 255, 0])));
    expect(found).toMatchObject({ channel: 'colour', beside: false });
    expect(found.full[hueOf([255, 255, 0])]).toBe(255);
  });

  it('reads a pale line of one hue by its colour, and raises it to full', () => {
    const found = surveyOf(sheet(WHITE, ...times(20, PALE_BLUE), ...times(5, [205, 230, 255])));
    expect([found.channel, found.full[hueOf(PALE_BLUE)]]).toEqual(['colour', 100]);
  });

  it('does not let a few stronger pixels of the one hue set what is full', () => {
    const found = surveyOf(sheet(WHITE, ...times(400, PALE_BLUE), ...times(2, [55, 155, 255])));
    expect(found.full[hueOf(PALE_BLUE)]).toBe(100);
  });

  it('reads lines of two hues each by its own colour', () => {
    const found = surveyOf(sheet(WHITE, ...times(20, [255, 235, 55]), ...times(20, [55, 105, 255])));
    expect([found.full[hueOf([255, 235, 55])], found.full[hueOf([55, 105, 255])]]).toEqual([200, 200]);
  });

  it('reads pale blue pencil beside black line in full, and says so', () => {
    const found = surveyOf(sheet(WHITE, ...times(30, BLACK), ...times(20, WHITE), ...times(20, PALE_BLUE)));
    expect([found.channel, found.full[hueOf(PALE_BLUE)], found.beside]).toEqual(['colour', 100, true]);
  });

  it('takes coloured fringes of black line for no colour', () => {
    const fringed = Array.from({ length: 40 }, () => [...times(6, WHITE), PALE_BLUE, ...times(4, BLACK)]);
    expect(surveyOf(sheet(WHITE, ...fringed.flat()))).toMatchObject(PLAIN);
  });

  it('leaves a wash under black line to darkness', () => {
    const pixels = Array.from({ length: 60 * 60 }, (_, i) => {
      const [x, y] = [i % 60, Math.floor(i / 60)];
      if (x === 30 || y === 30) return BLACK;
      return Math.hypot(x - 30, y - 30) < 25 ? PALE_BLUE : WHITE;
    });
    expect(surveyOf(pixels, 60)).toMatchObject({ channel: 'darkness', beside: false });
  });

  it('finds the tint of the sheet: kraft, cream; none on white, none of a wash on white', () => {
    const kraft = [190, 150, 110];
    expect(surveyOf(sheet(kraft, ...times(20, BLACK))).paper).toEqual([255, 201, 148]);
    expect(surveyOf(sheet([245, 230, 195], ...times(20, BLACK))).paper).toEqual([255, 239, 203]);
    expect(surveyOf(sheet([252, 250, 248], ...times(20, BLACK))).paper).toEqual([255, 255, 255]);
    expect(surveyOf([...times(40, WHITE), ...times(60, kraft), ...times(9, BLACK)]).paper).toEqual(WHITE);
  });

  it('takes a yellow that fills the picture for no paper', () => {
    expect(surveyOf([...times(5, WHITE), ...times(95, [255, 255, 0])]).paper).toEqual(WHITE);
  });

  it('takes a red that lies on both ends of the circle of hues for one hue', () => {
    const found = surveyOf(sheet(WHITE, ...times(20, [255, 0, 20]), ...times(20, [255, 20, 0])));
    expect(found).toMatchObject({ channel: 'colour', beside: false });
    expect([found.full[hueOf([255, 0, 20])], found.full[hueOf([255, 20, 0])]]).toEqual([255, 255]);
  });
});
