import { describe, expect, it } from 'vitest';
import { faultsOf } from '../../../src/app/files/deliver.ts';

const fault = (severity: 'note' | 'warning' | 'error', message: string) => ({
  code: 'x',
  severity,
  message,
});

describe('a delivery', () => {
  it('names what is wrong before, errors first, each once and no mere notes', () => {
    const lists = [[fault('warning', 'thin'), fault('note', 'fyi')], undefined, [fault('error', 'cut')]];
    expect(faultsOf([...lists, [fault('warning', 'thin')]]).map(({ message }) => message)).toEqual([
      'cut',
      'thin',
    ]);
  });
});
