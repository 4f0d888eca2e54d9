import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { faultsOf, zipOf } from '../../../src/app/files/deliver.ts';

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

  it('is one ZIP, the same bytes for the same files', () => {
    const files = [{ name: 'plate.png', bytes: Uint8Array.of(1, 2, 3) }];
    expect(unzipSync(zipOf(files))).toEqual({ 'plate.png': Uint8Array.of(1, 2, 3) });
    expect(zipOf(files)).toEqual(zipOf(files));
  });
});
