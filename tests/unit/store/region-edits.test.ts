import { describe, expect, it } from 'vitest';
import { handEdits, regionsNode, withEdit, withoutEdit } from '../../../src/store/region-edits.ts';
import { defaultJob, reopened } from '../support/jobs.ts';

const start = defaultJob({});
const join = { does: 'join', fromMm: [1, 2], toMm: [3, 4] } as const;

function made() {
  return withEdit(withEdit(start, { ...join, fromMm: [1, 2], toMm: [3, 4] }), {
    does: 'ignore-mark',
    atMm: [5, 6],
  });
}

describe('hand edits of a job', () => {
  it('are kept at its first Closed regions, each under an id of its own, and outlive a save', () => {
    const job = made();
    expect(handEdits(job)).toEqual([
      { ...join, id: 'e1' },
      { id: 'e2', does: 'ignore-mark', atMm: [5, 6] },
    ]);
    expect(handEdits(reopened(job))).toEqual(handEdits(job));
    expect(handEdits(start)).toEqual([]);
  });

  it('are taken back one by one; the last leaves the settings as they were', () => {
    const one = withoutEdit(made(), 'e1');
    expect(handEdits(one).map(({ id }) => id)).toEqual(['e2']);
    expect(regionsNode(withoutEdit(one, 'e2'))!.settings).toEqual(regionsNode(start)!.settings);
    expect(withoutEdit(one, 'e9')).toBe(one);
  });

  it('never get an id that another has', () => {
    const again = withEdit(withoutEdit(made(), 'e1'), { does: 'ignore-mark', atMm: [0, 0] });
    expect(handEdits(again).map(({ id }) => id)).toEqual(['e2', 'e3']);
  });

  it('change nothing in a job without Closed regions', () => {
    const bare = { ...start, graph: { nodes: [], wires: [] } };
    expect(withEdit(bare, { does: 'ignore-mark', atMm: [0, 0] })).toBe(bare);
  });
});
