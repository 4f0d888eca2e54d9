import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../src/graph/inks.ts';
import { differenceOf } from '../../../src/ink/difference.ts';
import { xyzOfLab } from '../../../src/ink/lab.ts';
import { printModel } from '../../../src/ink/model.ts';
import { swatchOf } from '../../../src/ink/swatch.ts';
import { coverageOfTone, gainOfToneIncrease, toneScaleOf } from '../../../src/ink/tone.ts';
import { conditionOf } from './conditions.ts';
import { processInk } from './figures.ts';
import regression from './model-regression.json';
import data from './tone-values.json';

const scaleOf = (paper: readonly number[], solid: readonly number[]) =>
  toneScaleOf(swatchOf(xyzOfLab(paper as Lab)).reflectance, swatchOf(xyzOfLab(solid as Lab)).reflectance);

/** Magenta and yellow are read on Y and Z, as here; cyan on X - 0.55 Z, which is not a plain axis. */
const readings = data.readings.filter(({ ink }) => ink !== 'C');

describe('tone values read on paper', () => {
  it('give back the colour of the tint they were read on: mean under 0.9, at most 2.6', () => {
    const errors = readings.map(({ set, ink, tone, tint, lab }) => {
      const { paper, lab: solids } = conditionOf(set);
      const film = tint / 100;
      const model = printModel({
        paper,
        inks: [{ ...processInk(ink, solids[ink as 'M' | 'Y']), curvePercent: [[tint, tone]] }],
      });
      return differenceOf(model.labOf([film]), lab as Lab);
    });
    expect(errors.reduce((sum, value) => sum + value, 0) / errors.length).toBeLessThan(0.9);
    expect(Math.max(...errors)).toBeLessThan(2.6);
  });

  it('at 50% give the dot gain that the first reckoning of the model gave (regression)', () => {
    const { paper } = conditionOf('FOGRA39L');
    for (const ink of ['M', 'Y'] as const) {
      const scale = scaleOf(paper.lab, conditionOf('FOGRA39L').lab[ink]);
      for (const [increase, gain] of Object.entries(regression.gFromTvi[ink])) {
        expect(gainOfToneIncrease(scale, Number(increase))).toBeCloseTo(gain, 3);
      }
    }
  });
});

describe('Yule-Nielsen and Murray-Davies worked values', () => {
  /** A. Murray (1936), J. A. C. Yule and W. J. Nielsen (1951) (from memory): a = (1-10^-Dt/n)/(1-10^-Ds/n). */
  it('density 0.3 of a 1.5 solid on a grey scale is coverage 0.355223 with n = 2', () => {
    const paper = new Float64Array(36).fill(1);
    const solid = new Float64Array(36).fill(10 ** -1.5);
    const tone = (1 - 10 ** -0.3) / (1 - 10 ** -1.5);
    expect(tone).toBeCloseTo(0.515102, 6);
    expect(coverageOfTone(toneScaleOf(paper, solid), tone)).toBeCloseTo(0.355223, 6);
  });
});
