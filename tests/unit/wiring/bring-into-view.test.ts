import { describe, expect, it } from 'vitest';
import { shiftInto } from '../../../src/wiring/bring-into-view.ts';

describe('bringing something into view', () => {
  const BOUNDS = { from: 0, to: 300 };

  it('leaves alone what is seen whole', () => {
    expect(shiftInto({ from: 100, to: 200 }, BOUNDS)).toBe(0);
  });

  it('moves just as far as is needed, with a margin', () => {
    expect(shiftInto({ from: -50, to: 50 }, BOUNDS)).toBe(78);
    expect(shiftInto({ from: 260, to: 360 }, BOUNDS)).toBe(-88);
  });

  it('shows the start of what is larger than the view', () => {
    expect(shiftInto({ from: 100, to: 900 }, BOUNDS)).toBe(-72);
  });
});
