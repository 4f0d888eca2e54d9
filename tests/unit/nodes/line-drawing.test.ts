import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BadInput } from '../../../src/graph/complaint.ts';
import { Bench } from '../support/engine.ts';
import { colourPng, linePng, withPpi } from '../support/files.ts';
import { defaultJob, type Settings } from '../support/jobs.ts';
import { drawnPlane, flatPlane } from '../support/pictures.ts';

const WIDTH = 90;
const HEIGHT = 60;

let bench: Bench;
beforeAll(() => {
  bench = new Bench();
});
afterAll(() => bench.close());

function drawn(name: string, bytes: Uint8Array, settings: Settings = {}) {
  const job = defaultJob({ asset: bench.asset(name, bytes), ...settings });
  return bench.evaluate(job, 'line-drawing.drawing', 'drawing');
}

/** A box with a bar across it. */
const marked = (x: number, y: number) => {
  const inside = x >= 20 && x < 70 && y >= 10 && y < 50;
  const hollow = x >= 24 && x < 66 && y >= 14 && y < 46;
  return inside && (!hollow || (y >= 28 && y < 32));
};
const LINE = drawnPlane(WIDTH, HEIGHT, (x, y) => (marked(x, y) ? 255 : 0));

const coloured = (line: readonly number[], paper: readonly number[]) =>
  colourPng(WIDTH, HEIGHT, (x, y) => (marked(x, y) ? line : paper));

describe('a line arrives in full (case 19)', () => {
  const WHITE = [255, 255, 255, 255];

  it.each([
    ['black on white', [0, 0, 0, 255], WHITE],
    ['pure yellow on white', [255, 255, 0, 255], WHITE],
    ['black on transparency', [0, 0, 0, 255], [0, 0, 0, 0]],
    ['pure yellow on transparency', [255, 255, 0, 255], [0, 0, 0, 0]],
    ['pale blue on white', [150, 200, 255, 255], WHITE],
  ])('%s', async (_, line, paper) => {
    const { value } = await drawn('line.png', coloured(line, paper));
    expect(value.line.data).toEqual(LINE.data);
  });

  it('a half transparent line is half a line', async () => {
    const { value } = await drawn('line.png', coloured([0, 0, 0, 128], [0, 0, 0, 0]), {
      channel: 'darkness',
    });
    expect(new Set(value.line.data)).toEqual(new Set([0, 128]));
  });

  it('by transparency a white line counts too', async () => {
    const png = coloured(WHITE, [0, 0, 0, 0]);
    const { value } = await drawn('line.png', png, { channel: 'transparency' });
    expect(value.line.data).toEqual(LINE.data);
  });
});

describe('the printed size of a drawing', () => {
  const plain = linePng(LINE);
  const sizeOf = async (bytes: Uint8Array, settings: Settings = {}, name = 'line.png') => {
    const { value, complaints } = await drawn(name, bytes, settings);
    return { ppi: value.ppi, mm: value.mm, codes: complaints.map(({ code }) => code) };
  };
  const mmAt = (ppi: number) => [(WIDTH * 25.4) / ppi, (HEIGHT * 25.4) / ppi];

  it('is not what a file of 72 ppi says: 300 ppi are assumed, with a complaint', async () => {
    expect(await sizeOf(withPpi(plain, 72))).toEqual({ ppi: 300, mm: mmAt(300), codes: ['size-assumed'] });
  });

  it('is what a file of 600 ppi says', async () => {
    expect(await sizeOf(withPpi(plain, 600))).toEqual({ ppi: 600, mm: mmAt(600), codes: [] });
  });

  it('is the width that was set, whatever the file says', async () => {
    expect(await sizeOf(withPpi(plain, 600), { widthMm: 45 })).toEqual({
      ppi: 50.8,
      mm: [45, 30],
      codes: [],
    });
  });

  it('follows from the ppi that were set, whatever the file says', async () => {
    expect(await sizeOf(withPpi(plain, 72), { ppi: 254 })).toEqual({ ppi: 254, mm: [9, 6], codes: [] });
  });

  const svg = (size: string) =>
    new TextEncoder().encode(
      `<svg xmlns="http://www.w3.org/2000/svg" ${size} viewBox="0 0 40 20"><path d="M4 4h30v12h-30z" fill="none" stroke="#000" stroke-width="2"/></svg>`,
    );

  it('of a vector drawing is what it says in mm, drawn out at 600 ppi', async () => {
    const { value, complaints } = await drawn('line.svg', svg('width="50.8mm" height="25.4mm"'));
    expect([value.line.width, value.line.height, value.ppi, value.mm]).toEqual([
      1200,
      600,
      600,
      [50.8, 25.4],
    ]);
    expect(complaints).toEqual([]);
  });

  it('of a vector drawing may be set, and its ppi besides', async () => {
    const { value, complaints } = await drawn('line.svg', svg('width="50.8mm" height="25.4mm"'), {
      widthMm: 25.4,
      ppi: 200,
    });
    expect([value.line.width, value.line.height, value.ppi]).toEqual([200, 100, 200]);
    expect(complaints).toEqual([]);
  });
});

describe('no drawing', () => {
  it('is made of a sheet without line', async () => {
    const refused = drawn('blank.png', linePng(flatPlane(40, 40)));
    await expect(refused).rejects.toThrow(BadInput);
    await expect(refused).rejects.toThrow(/blank\.png: no line in it/);
  });

  it('is made of a speck of a picture', async () => {
    await expect(drawn('tiny.png', linePng(flatPlane(15, 40, 255)))).rejects.toThrow(/only 15 x 40 px/);
  });

  it('is made of no file', async () => {
    const job = defaultJob({});
    await expect(bench.value(job, 'line-drawing.drawing', 'drawing')).rejects.toThrow(/no file yet/);
  });

  it('is made of a file that nobody handed in', async () => {
    const job = defaultJob({ asset: 'a'.repeat(64) });
    await expect(bench.value(job, 'line-drawing.drawing', 'drawing')).rejects.toThrow(
      /aaaaaaaaaaaa.*missing/,
    );
  });
});
