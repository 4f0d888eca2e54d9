import { describe, expect, it } from 'vitest';
import { pressFaults } from '../../../src/nodes/press-faults.ts';
import { registerOffset } from '../../../src/nodes/register-offset.ts';
import { shiftOf } from '../../../workers/nodes/register-offset.ts';
import { shownOf } from '../../../workers/tasks/edition.ts';
import { sheetOfRun } from '../../../workers/tasks/edition-sheet.ts';
import { defaultJob, reopened, withSettings } from '../support/jobs.ts';

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
