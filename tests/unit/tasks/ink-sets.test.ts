import { describe, expect, it } from 'vitest';
import { DEMO_SHELF } from '../../../src/ink/demo-inks.ts';
import { type InkSetsInput, rankInkSets } from '../../../src/ink/ink-sets.ts';
import { USUAL_RULES } from '../../../src/ink/recipe-search.ts';
import { cancelFlag, raise } from '../../../workers/engine/cancel.ts';
import type { ProgressReport } from '../../../workers/engine/progress.ts';
import { inkSets } from '../../../workers/tasks/ink-sets.ts';
import type { TaskContext } from '../../../workers/tasks/task.ts';

const INPUT: InkSetsInput = {
  shelf: DEMO_SHELF.inks.slice(0, 6),
  paper: DEMO_SHELF.paper,
  printing: {},
  wanted: [{ lab: [60, 30, 30], weight: 1 }],
  count: 3,
  rules: USUAL_RULES,
  most: 4,
};
const engine = {} as TaskContext['engine'];

describe('the search for ink sets', () => {
  it('gives the ranking and tells how far it is', async () => {
    const reports: ProgressReport[] = [];
    const onProgress = (report: ProgressReport) => reports.push(report);
    const found = await inkSets(INPUT, { engine, flag: cancelFlag(), onProgress });
    expect(found).toEqual(rankInkSets(INPUT));
    expect(reports).toEqual([0, 8, 16].map((done) => ({ node: 'ink-sets', done, of: 20 })));
  });

  it('stops between sets when cancelled, on the way too', async () => {
    const flag = cancelFlag();
    let reports = 0;
    const onProgress = () => {
      reports++;
      raise(flag);
    };
    await expect(inkSets(INPUT, { engine, flag, onProgress })).rejects.toThrow('cancelled');
    expect(reports).toBe(1);
  });

  it('lets other work of its thread go on between', async () => {
    const order: string[] = [];
    setTimeout(() => order.push('other work'));
    await inkSets(INPUT, { engine, flag: cancelFlag(), onProgress: () => {} });
    order.push('found');
    expect(order).toEqual(['other work', 'found']);
  });

  it('says what is wrong as bad input', async () => {
    const asked = inkSets({ ...INPUT, count: 9 }, { engine, flag: cancelFlag(), onProgress: () => {} });
    await expect(asked).rejects.toMatchObject({ name: 'BadInput', message: 'a set has 1 to 6 inks, not 9' });
  });
});
