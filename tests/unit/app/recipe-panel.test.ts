import { describe, expect, it } from 'vitest';
import { coloursOf } from '../../../src/app/panels/print-colours.ts';
import { stripsOf } from '../../../src/app/panels/swatch-strips.ts';
import { nearestStop, nextStop, STOPS, tintOf } from '../../../src/app/panels/tint-steps.ts';
import { tornOutline } from '../../../src/app/panels/torn.ts';
import { printOf } from '../../../src/nodes/print.ts';
import { defaultJob, withSettings } from '../support/jobs.ts';

describe('usual tints', () => {
  it('are paper, 15 to 85 in steps of five, and the solid', () => {
    expect(STOPS[0]).toBe(0);
    expect(STOPS.slice(1, -1)).toEqual([15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85]);
    expect(STOPS.at(-1)).toBe(100);
  });

  it('follow one another, from any tint', () => {
    expect([nextStop(0, 1), nextStop(12, 1), nextStop(85, 1), nextStop(100, 1)]).toEqual([15, 15, 100, 100]);
    expect([nextStop(100, -1), nextStop(83, -1), nextStop(15, -1), nextStop(0, -1)]).toEqual([85, 80, 0, 0]);
  });

  it('are near to any other', () => {
    expect([0, 7, 8, 52, 93].map((tint) => STOPS[nearestStop(tint)])).toEqual([0, 0, 15, 50, 100]);
  });

  it('need not be kept to: any number is taken as it is typed', () => {
    expect(['12', '12,5', '12.34 %', '120', '-3'].map(tintOf)).toEqual([12, 12.5, 12.3, 100, 0]);
    expect(['', 'a', '%'].map(tintOf)).toEqual([null, null, null]);
  });
});

describe('strips of swatches', () => {
  it('are one for every ink and one for every pair', () => {
    const plates = stripsOf(['a', 'b', 'c'], null).map((strip) => strip.plates.join('+'));
    expect(plates).toEqual(['a', 'b', 'c', 'a+b', 'a+c', 'b+c']);
  });

  it('hold pairs of one ink alone when there are more than five', () => {
    const plates = stripsOf(['a', 'b', 'c', 'd', 'e', 'f'], 'c').map((strip) => strip.plates);
    expect(plates).toHaveLength(6 + 5);
    expect(plates.slice(6).every((pair) => pair.includes('c'))).toBe(true);
  });
});

describe('torn outlines', () => {
  it('are the same for the same piece and differ from piece to piece', () => {
    expect(tornOutline(4, 3)).toBe(tornOutline(4, 3));
    const all = new Set(Array.from({ length: 100 }, (_, piece) => tornOutline(piece, 3)));
    expect(all.size).toBe(100);
  });
});

describe('colours of a print', () => {
  const job = defaultJob({});
  const colours = (changed = job) => coloursOf(printOf(changed.graph.nodes)!, 'srgb');

  it('are those of the bare paper where nothing prints', () => {
    const [l, a, b] = colours().colourOf({}).lab;
    expect(l).toBeCloseTo(95, 3);
    expect(a).toBeCloseTo(0.5, 3);
    expect(b).toBeCloseTo(-2, 3);
  });

  it('are those of the solids as they were read', () => {
    const { lab, hex } = colours().colourOf({ brick: 100 });
    expect(lab.map((value) => Math.round(value))).toEqual([50, 50, 30]);
    expect(hex).toMatch(/^#[0-9a-f]{6}$/);
  });

  it('follow the paper that the proof lies on', () => {
    const blue = withSettings(job, { 'paper-stock': { lab: [70, -5, -25] } });
    expect(colours(blue).colourOf({ straw: 40 }).hex).not.toBe(colours().colourOf({ straw: 40 }).hex);
  });

  it('say that overprints are predicted', () => {
    expect(colours().notes.join()).toMatch(/predicted/);
  });

  it('cannot be told of a job without inks', () => {
    const bare = job.graph.nodes.filter(({ kind }) => kind !== 'ink-set');
    expect(printOf(bare)).toBeNull();
  });
});
