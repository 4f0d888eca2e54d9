import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { paperStock } from '../../../src/nodes/paper-stock.ts';
import { evenScan } from '../../../workers/kernels/even-scan.ts';
import { Bench } from '../support/engine.ts';
import { linePng } from '../support/files.ts';
import { defaultJob, type Settings, withRecipes, withSettings } from '../support/jobs.ts';
import { drawnPlane } from '../support/pictures.ts';
import { randomOf } from '../support/random.ts';

let bench: Bench;
beforeAll(() => {
  bench = new Bench();
});
afterAll(() => bench.close());

/** 76 mm square at 150 ppi, solid in the middle. */
const SIDE = 450;
const LINE = drawnPlane(SIDE, SIDE, (x, y) => (Math.abs(x - 225) < 60 && Math.abs(y - 225) < 60 ? 255 : 0));

async function proofOn(paper: Settings) {
  const job = withSettings(defaultJob({ asset: bench.drawing(LINE), ppi: 150 }), {
    'paper-stock': { toothPercent: 0, fibresPercent: 0, ...paper },
    'plate-grain': { strengthPercent: 0 },
  });
  return bench.value(withRecipes(job, {}, {}), 'proof.proof', 'proof');
}

/** A lighter middle, darker corners, and noise: bare paper under a poor lamp. */
function scan(width: number, height: number, level = 225) {
  const random = randomOf(4);
  const pixels = new Uint8Array(width * height * 3);
  for (let i = 0; i < width * height; i++) {
    const [x, y] = [(i % width) / width - 0.5, Math.floor(i / width) / height - 0.5];
    const value = level * (1 - 0.3 * (x * x + y * y)) + 12 * (random() - 0.5);
    for (let c = 0; c < 3; c++) pixels[i * 3 + c] = Math.max(0, value);
  }
  return { pixels, width, height, bands: 3, reach: 30, swing: 1066, name: 'paper.png' };
}

describe('a scanned sheet', () => {
  const { width, height, data } = evenScan(scan(400, 300));
  const mean = (left: number, top: number) => {
    let sum = 0;
    for (let y = top; y < top + 60; y++) for (let x = left; x < left + 60; x++) sum += data[y * width + x]!;
    return sum / 3600;
  };

  it('is evened: corners that were 27 % darker are within 1.5 % of the middle', () => {
    for (const [x, y] of [
      [0, 0],
      [width - 60, 0],
      [0, height - 60],
      [width >> 1, height >> 1],
    ])
      expect(Math.abs(mean(x!, y!) - 128)).toBeLessThan(16);
  });

  it('has no seam: across it pixels differ no more than elsewhere', () => {
    const step = (a: number, b: number) => {
      let sum = 0;
      for (let y = 0; y < height; y++) sum += Math.abs(data[y * width + a]! - data[y * width + b]!);
      return sum / height;
    };
    expect(step(0, width - 1)).toBeLessThan(1.3 * step(150, 151));
  });

  it('is refused when it is too small or no bare paper', () => {
    expect(() => evenScan(scan(100, 300))).toThrow(/paper.png: only 100 x 300 px/);
    expect(() => evenScan(scan(300, 300, 60))).toThrow(/paper.png: too dark/);
  });

  it('is laid under the print, and refused when it cannot be read', async () => {
    const paper = drawnPlane(300, 300, (x, y) => ((x * 7 + y * 13) % 11 < 5 ? 30 : 20));
    const asset = bench.asset('sheet.png', linePng(paper));
    const plain = await proofOn({});
    const scanned = await proofOn({ asset, scanPpi: 150 });
    expect(scanned.pixels.filter((value, i) => value !== plain.pixels[i]).length).toBeGreaterThan(
      SIDE * SIDE,
    );
    const broken = bench.asset('broken.png', linePng(paper).subarray(0, 200));
    await expect(proofOn({ asset: broken })).rejects.toThrow(/broken.png/);
  });
});

describe('the sheet', () => {
  it('without a deckle edge is paper to its rim; with one it is torn there and whole within', async () => {
    const [cut, torn] = [await proofOn({}), await proofOn({ deckleMm: 3 })];
    const differing = (from: number, to: number) => {
      let count = 0;
      for (let y = from; y < to; y++)
        for (let x = from; x < to; x++)
          if (cut.pixels[(y * SIDE + x) * 3 + 1] !== torn.pixels[(y * SIDE + x) * 3 + 1]) count++;
      return count;
    };
    expect(differing(0, SIDE)).toBeGreaterThan(2000);
    expect(differing(24, SIDE - 24)).toBe(0);
  });

  it('thins ink on its hills when told so, and leaves bare paper as it is', async () => {
    const [full, thin] = [
      await proofOn({ toothPercent: 80 }),
      await proofOn({ toothPercent: 80, inkOnToothPercent: 100 }),
    ];
    const sum = ({ pixels }: typeof full, from: number) => {
      let total = 0;
      for (let y = from; y < from + 40; y++)
        for (let x = from; x < from + 40; x++) total += pixels[(y * SIDE + x) * 3]!;
      return total;
    };
    expect(sum(thin, 200)).toBeGreaterThan(1.1 * sum(full, 200));
    expect(sum(thin, 20)).toBe(sum(full, 20));
  });
});

describe('settings of Paper stock', () => {
  it('of version 1 still open: wove, no flecks, a cut edge', () => {
    const old = {
      lab: [94, 1, 3],
      surface: 'coated',
      toothPercent: 10,
      toothMm: 0.3,
      fibresPercent: 5,
      seed: 9,
    };
    expect(paperStock.settings.parse(old)).toMatchObject({
      ...old,
      mould: 'wove',
      flecksPerDm2: 0,
      deckleMm: 0,
      asset: null,
      inkOnToothPercent: 0,
      fibresSpreadDeg: 90,
    });
  });

  it.each([{ toothMm: 0 }, { laidMm: 1000 }, { deckleMm: -1 }, { scanPpi: 0 }, { flecksMm: 2000 }])(
    'refuse %j',
    (bad) => {
      expect(paperStock.settings.safeParse(bad).success).toBe(false);
    },
  );
});
