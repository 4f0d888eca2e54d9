import { describe, expect, it } from 'vitest';
import { type Field, fieldsOf } from '../../../src/docket/fields.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';

function field(kind: string, name: string): Field {
  return fieldsOf(nodeKinds.get(kind)!).find((each) => each.name === name)!;
}

describe('fields made from a schema', () => {
  it('give a number its range, unit, title, help and usual value', () => {
    expect(field('plate-grain', 'sizeMm')).toEqual({
      as: 'number',
      name: 'sizeMm',
      title: 'Size',
      help: 'Of a mottle, its largest blotches; of the others, from one blotch to the next.',
      usual: 0.35,
      least: 0.05,
      most: 20,
      whole: false,
      unit: 'mm',
      nullable: false,
    });
  });

  it('know a number that may be left empty', () => {
    expect(field('line-drawing', 'widthMm')).toMatchObject({ as: 'number', nullable: true, usual: null });
  });

  it('give a choice its words', () => {
    expect(field('key-line', 'fills')).toMatchObject({ as: 'choice', words: ['knocked-out', 'kept'] });
  });

  it('know seeds, files, colours and what is done by hand on the print', () => {
    expect(field('plate-grain', 'seed').as).toBe('seed');
    expect(field('line-drawing', 'asset').as).toBe('file');
    expect(field('paper-stock', 'lab').as).toBe('colour');
    expect(field('closed-regions', 'edits').as).toBe('hand-edits');
  });

  it('give settings by plate the field of one plate, under the title of all', () => {
    expect(field('key-line', 'tintPercentOf')).toMatchObject({
      as: 'per-plate',
      value: { as: 'number', unit: '%', title: 'Line prints at, by plate' },
    });
    expect(field('key-line', 'fillsOf')).toMatchObject({ value: { as: 'choice' } });
  });

  it('give the offsets of a plate their parts with units', () => {
    const offsets = field('register-offset', 'offsets');
    expect(offsets).toMatchObject({ as: 'per-plate', value: { as: 'group' } });
    if (offsets.as !== 'per-plate' || offsets.value.as !== 'group') throw new Error('no parts');
    expect(offsets.value.parts.map((part) => part.as === 'number' && [part.title, part.unit])).toEqual([
      ['Along', 'mm'],
      ['Across', 'mm'],
      ['Rotation', 'deg'],
      ['Stretch', 'mm'],
    ]);
  });

  it('leave nothing of any kind without a control but what the form of an Ink set shows', () => {
    const unknown = [...nodeKinds.values()].flatMap((kind) =>
      fieldsOf(kind)
        .filter(({ as }) => as === 'unknown')
        .map(({ name }) => `${kind.kind}.${name}`),
    );
    expect(unknown).toEqual(['ink-set.inks', 'ink-set.plates', 'ink-set.measured', 'ink-set.takeUps']);
  });
});
