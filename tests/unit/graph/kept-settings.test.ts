import { describe, expect, it } from 'vitest';
import { isSetAs, keepable, withKept, withoutKept, withPreset } from '../../../src/graph/kept-settings.ts';
import { proposalRulesSchema } from '../../../src/graph/proposal-rules.ts';
import { jobInStyle, parseStyle, styleOf } from '../../../src/graph/style.ts';
import { plateGrain } from '../../../src/nodes/plate-grain.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import { defaultJob, reopened } from '../support/jobs.ts';

const presets = [...nodeKinds.values()].flatMap((kind) =>
  (kind.presets?.list ?? []).map((preset) => ({ kind, title: `${kind.title}, ${preset.name}`, preset })),
);

describe('presets', () => {
  it('are there for grain, faults, register, paper and brushes', () => {
    const kinds = [...nodeKinds.values()].filter((kind) => kind.presets).map(({ kind }) => kind);
    expect(kinds.sort()).toEqual([
      'hand-marks',
      'paper-stock',
      'plate-grain',
      'press-faults',
      'register-offset',
    ]);
  });

  it.each(presets)('fit their kind, and each sets something: $title', ({ kind, preset }) => {
    const parsed = kind.presets!.shape.strict().safeParse(preset.settings);
    expect(parsed.error?.message).toBeUndefined();
    expect(isSetAs(kind, preset.settings as never, {})).toBe(false);
  });

  it('have each its own name within their kind, and none looks like another', () => {
    for (const { kind, preset } of presets) {
      const others = kind.presets!.list.filter((other) => other !== preset);
      expect(others.map(({ name }) => name)).not.toContain(preset.name);
      for (const other of others)
        expect(isSetAs(kind, preset.settings as never, other.settings as never)).toBe(false);
    }
  });
});

describe('kept settings', () => {
  it('take the place of all that presets decide, and of nothing else', () => {
    const before = { sizeMm: 3, hardness: 80, seed: 9, strengthPercentOf: { straw: 10 } };
    const after = withPreset(plateGrain, before, { sizeMm: 1, seed: 4 });
    expect(after).toEqual({ sizeMm: 1, seed: 9, strengthPercentOf: { straw: 10 } });
    expect(isSetAs(plateGrain, after, { sizeMm: 1 })).toBe(true);
    expect(isSetAs(plateGrain, before, { sizeMm: 1 })).toBe(false);
  });

  it('travel with the job and its house style, by name, until they are forgotten', () => {
    const kept = {
      kind: 'plate-grain',
      name: 'Our field',
      settings: keepable(plateGrain, { sizeMm: 2, seed: 3 }),
    };
    const job = withKept(withKept(defaultJob({}), { ...kept, settings: {} }), kept);
    expect(job.kept).toEqual([{ ...kept, settings: { sizeMm: 2 } }]);
    expect(reopened(job)).toEqual(job);
    const rules = proposalRulesSchema.parse({ palette: [{ recipe: {} }] });
    const style = parseStyle(JSON.stringify(styleOf(job, 'Field', rules)), nodeKinds);
    expect(jobInStyle(style, 'a.svg', 'a'.repeat(64)).kept).toEqual(job.kept);
    expect(withoutKept(job, kept)).toEqual(defaultJob({}));
  });
});
