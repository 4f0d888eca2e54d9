import { describe, expect, it } from 'vitest';
import { type Channel, coverage } from '../../../workers/kernels/coverage.ts';
import { surveyLine } from '../../../workers/kernels/survey-line.ts';
import { flatPlane } from '../support/pictures.ts';

const AS_IT_IS = Uint8Array.from({ length: 256 }, (_, v) => v);
type Bands = 1 | 2 | 3 | 4;

function lineOf(pixels: number[][], channel: Channel, table = AS_IT_IS): number[] {
  const bands = pixels[0]!.length as Bands;
  const line = flatPlane(pixels.length, 1, 9);
  coverage({ pixels: Uint8Array.from(pixels.flat()), bands, channel, table, line }, 0, 1);
  return [...line.data];
}

const surveyOf = (pixels: number[][]) =>
  surveyLine({ pixels: Uint8Array.from(pixels.flat()), bands: pixels[0]!.length as Bands });

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

  it('goes through its table last', () => {
    const double = Uint8Array.from({ length: 256 }, (_, v) => Math.min(255, 2 * v));
    expect(lineOf([[255], [205], [100]], 'darkness', double)).toEqual([0, 100, 255]);
  });
});

describe('the survey of a line', () => {
  const WHITE = [255, 255, 255];

  it('reads black on white by darkness', () => {
    expect(surveyOf(sheet([255], ...times(20, [0])))).toEqual({
      channel: 'darkness',
      full: 255,
    });
    expect(surveyOf(sheet(WHITE, ...times(20, [0, 0, 0])))).toMatchObject({ channel: 'darkness', full: 255 });
  });

  it('reads black on transparency by darkness', () => {
    const found = surveyOf(sheet([0, 0, 0, 0], ...times(20, [0, 0, 0, 255])));
    expect(found).toEqual({ channel: 'darkness', full: 255 });
    expect(surveyOf(sheet([0, 0], ...times(20, [0, 255])))).toEqual(found);
  });

  it('reads pure yellow by its colour, in full', () => {
    expect(surveyOf(sheet(WHITE, ...times(20, [255, 255, 0])))).toEqual({
      channel: 'colour',
      full: 255,
    });
  });

  it('reads a pale line of one hue by its colour, and raises it to full', () => {
    const pale = surveyOf(sheet(WHITE, ...times(20, [155, 205, 255]), ...times(5, [205, 230, 255])));
    expect(pale).toEqual({ channel: 'colour', full: 100 });
  });

  it('does not let a few stronger pixels of the one hue set what is full', () => {
    const found = surveyOf(sheet(WHITE, ...times(400, [155, 205, 255]), ...times(2, [55, 155, 255])));
    expect(found).toMatchObject({ channel: 'colour', full: 100 });
  });

  it('reads lines of two hues by darkness', () => {
    const found = surveyOf(sheet(WHITE, ...times(20, [255, 255, 0]), ...times(20, [0, 80, 255])));
    expect(found).toMatchObject({ channel: 'darkness', full: 255 });
  });

  it('reads black line over pale blue pencil by darkness', () => {
    const found = surveyOf(sheet(WHITE, ...times(30, [0, 0, 0]), ...times(20, [155, 205, 255])));
    expect(found).toMatchObject({ channel: 'darkness', full: 255 });
  });

  it('takes a red that lies on both ends of the circle of hues for one hue', () => {
    const found = surveyOf(sheet(WHITE, ...times(20, [255, 0, 20]), ...times(20, [255, 20, 0])));
    expect(found).toMatchObject({ channel: 'colour', full: 255 });
  });

  it('never calls less than a clear mark full', () => {
    expect(surveyOf(sheet(WHITE)).full).toBeGreaterThanOrEqual(48);
  });
});
