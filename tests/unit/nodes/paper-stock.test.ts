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

describe('show-through', () => {
  /** A bar at the left that prints solid: its back lies at the right. */
  const BAR = drawnPlane(SIDE, SIDE, (x, y) => (x > 30 && x < 90 && y > 60 && y < 390 ? 255 : 0));
  const shown = async (paper: Settings, scale = 1) => {
    const job = withSettings(defaultJob({ asset: bench.drawing(BAR), ppi: 150 }), {
      'paper-stock': { toothPercent: 0, fibresPercent: 0, ...paper },
      'plate-grain': { strengthPercent: 0 },
    });
    return bench.value(withRecipes(job, {}, {}), 'proof.proof', 'proof', scale);
  };
  const at = ({ pixels, width }: { pixels: Uint8Array; width: number }, x: number, y: number) => [
    ...pixels.subarray((y * width + x) * 3, (y * width + x) * 3 + 3),
  ];
  const linear = (byte: number) => (byte <= 10 ? byte / 255 / 12.92 : ((byte / 255 + 0.055) / 1.055) ** 2.4);

  it('is absent at 0 %, whatever lies on the back', async () => {
    const plain = await shown({});
    expect((await shown({ showThroughPercent: 0 })).pixels).toEqual(plain.pixels);
  });

  it('shows this print mirrored: each channel of the paper loses its share of what the ink takes', async () => {
    const plain = await shown({});
    const through = await shown({ showThroughPercent: 20 });
    const [bare, ink] = [at(plain, 390, 200), at(plain, 60, 200)];
    at(through, 390, 200).forEach((byte, c) => {
      const wanted = linear(bare[c]!) * (1 - 0.2 * (1 - linear(ink[c]!) / linear(bare[c]!)));
      expect(linear(byte)).toBeCloseTo(wanted, 2);
    });
    expect(at(through, 225, 200)).toEqual(at(plain, 225, 200));
    expect(at(through, 60, 200)).toEqual(at(plain, 60, 200));
  });

  it('shows another picture of the back, mirrored and as wide as the sheet', async () => {
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg" width="40" height="20"><path d="M0 0h20v20H0z" fill="#fff"/><path d="M20 0h20v20H20z" fill="#00f"/></svg>';
    const backAsset = bench.asset('back.svg', new TextEncoder().encode(svg));
    const plain = await shown({});
    const through = await shown({ showThroughPercent: 30, backAsset });
    const [red, , blue] = at(through, 150, 40);
    expect(blue).toBeGreaterThanOrEqual(at(plain, 150, 40)[2]! - 1);
    expect(linear(red!) / linear(at(plain, 150, 40)[0]!)).toBeCloseTo(0.7, 1);
    expect(at(through, 350, 40)).toEqual(at(plain, 350, 40));
    expect(at(through, 150, 300)).toEqual(at(plain, 150, 300));
  });

  it('is in small what it is in full', async () => {
    const [full, small] = [
      await shown({ showThroughPercent: 40 }),
      await shown({ showThroughPercent: 40 }, 5),
    ];
    expect(Math.abs(at(small, 78, 40)[0]! - at(full, 390, 200)[0]!)).toBeLessThanOrEqual(1);
  });

  it('refuses a back that cannot be read, and looks at none while nothing shows through', async () => {
    const broken = bench.asset('back.png', linePng(BAR).subarray(0, 200));
    await expect(shown({ showThroughPercent: 10, backAsset: broken })).rejects.toThrow(/back\.png/);
    await expect(shown({ showThroughPercent: 0, backAsset: broken })).resolves.toBeDefined();
  });
});
