import { PDFDocument } from '@cantoo/pdf-lib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pressFaults } from '../../../src/nodes/press-faults.ts';
import { registerOffset } from '../../../src/nodes/register-offset.ts';
import { cancelFlag } from '../../../workers/engine/cancel.ts';
import { shiftOf } from '../../../workers/nodes/register-offset.ts';
import { type EditionInput, edition, shownOf } from '../../../workers/tasks/edition.ts';
import { sheetOfRun } from '../../../workers/tasks/edition-sheet.ts';
import { Bench } from '../support/engine.ts';
import { defaultJob, reopened, withRecipes, withSettings } from '../support/jobs.ts';
import { drawnPlane } from '../support/pictures.ts';

const OF = 200;
const job = withSettings(defaultJob({}), {
  'register-offset': { offsets: { brick: { alongMm: 0.2 } }, toleranceAlongMm: 0.4, toleranceAcrossMm: 0.2 },
});
const settingsAt = (sheet: number, seed = 1) => {
  const { nodes } = sheetOfRun(job, { sheet, of: OF, seed }).graph;
  const of = (kind: string) => nodes.find((node) => node.kind === kind)!.settings;
  return {
    register: registerOffset.settings.parse(of('register-offset')),
    faults: pressFaults.settings.parse(of('press-faults')),
  };
};
const run = Array.from({ length: OF }, (_, k) => settingsAt(k + 1));
const alongOf = ({ register }: (typeof run)[number]) => shiftOf({ id: 'brick', order: 2 }, register).alongMm;

describe('a sheet of an edition', () => {
  it('is a job that can be saved and opened, with a press before its proof', () => {
    const sheet = sheetOfRun(job, { sheet: 3, of: OF, seed: 1 });
    expect(reopened(sheet)).toEqual(sheet);
    const into = sheet.graph.wires.find(({ to }) => to.node === 'proof' && to.port === 'plates');
    expect(into?.from.node).toBe('press-faults');
    expect(
      sheet.graph.wires.some(({ from, to }) => from.node === 'press-faults' && to.node === 'press-file'),
    ).toBe(false);
    expect(job.graph.nodes.some(({ kind }) => kind === 'press-faults')).toBe(false);
  });

  it('is the same for the same run, and another in another', () => {
    expect(settingsAt(7)).toEqual(run[6]);
    expect(settingsAt(7, 2)).not.toEqual(run[6]);
  });

  it('stays within the tolerance of register about what is set, and uses most of it', () => {
    const along = run.map(alongOf);
    for (const mm of along) expect(Math.abs(mm - 0.2)).toBeLessThanOrEqual(0.4 + 1e-9);
    expect(Math.max(...along) - Math.min(...along)).toBeGreaterThan(0.3);
  });

  it('drifts: sheets near one another are more alike than sheets far apart', () => {
    const drift = run.map(({ register }) => register.offsets.brick!.alongMm);
    const steps = drift.slice(1).map((mm, k) => Math.abs(mm - drift[k]!));
    expect(Math.max(...steps)).toBeLessThan(0.03);
    expect(Math.max(...drift) - Math.min(...drift)).toBeGreaterThan(0.05);
  });

  it('has more faults towards the end, and a film of ink that never runs out', () => {
    expect(run.at(-1)!.faults.amountPercent).toBeGreaterThan(1.9 * run[0]!.faults.amountPercent);
    for (const { faults } of run)
      for (const film of Object.values(faults.densityPercentOf)) {
        expect(film).toBeGreaterThanOrEqual(88);
        expect(film).toBeLessThanOrEqual(100);
      }
  });
});

describe('the contact sheet of an edition', () => {
  it('shows every sheet of a short run, and first, last and some between of a long one', () => {
    expect(shownOf(1)).toEqual([1]);
    expect(shownOf(4)).toEqual([1, 2, 3, 4]);
    const shown = shownOf(500);
    expect([shown[0], shown.at(-1), new Set(shown).size]).toEqual([1, 500, 48]);
  });
});

describe('an edition', () => {
  let bench: Bench;
  beforeAll(() => {
    bench = new Bench();
  });
  afterAll(() => bench.close());

  const LINE = drawnPlane(400, 300, (x, y) => (Math.abs(x - 200) < 60 && Math.abs(y - 150) < 60 ? 255 : 0));
  const made = async (more: Partial<EditionInput>) => {
    const small = withRecipes(defaultJob({ asset: bench.drawing(LINE), ppi: 254 }), {}, { straw: 40 });
    const input = { job: small, sheets: 3, full: [], numbered: false, seed: 1, contact: false, pdfPpi: null };
    const context = { engine: bench.engine, flag: cancelFlag(), onProgress: () => {} };
    return (await edition({ ...input, ...more }, context)).files;
  };

  it('gives what is asked for: the run small, single sheets, all sheets in one PDF', async () => {
    expect((await made({ contact: true, full: [2] })).map(({ name }) => name)).toEqual([
      'contact-sheet.png',
      'sheet-2.png',
    ]);
    expect((await made({ pdfPpi: 254 })).map(({ name }) => name)).toEqual(['edition.pdf']);
  });

  it('has a page of the true size for each sheet in its PDF, with a margin where they are numbered', async () => {
    const sizes = async (numbered: boolean) => {
      const [file] = await made({ pdfPpi: 127, numbered });
      const pdf = await PDFDocument.load(file!.bytes);
      return pdf.getPages().map((page) => page.getSize());
    };
    const page = (high: number) => ({
      width: expect.closeTo((40 * 72) / 25.4, 3),
      height: expect.closeTo((high * 72) / 25.4, 3),
    });
    expect(await sizes(false)).toEqual([page(30), page(30), page(30)]);
    expect(await sizes(true)).toEqual([page(40), page(40), page(40)]);
  });

  it('says at what ppi its PDF would not be too large', async () => {
    await expect(made({ sheets: 10_000, pdfPpi: 254 })).rejects.toThrow(
      /a PDF of 10000 sheets at 254 ppi would be too large; take 146 ppi or less/,
    );
  });
});
