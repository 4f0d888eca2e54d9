import { describe, expect, it } from 'vitest';
import { layCells, type SheetCell, sheetOf } from '../../../workers/tasks/contact-cells.ts';

const cell = (title: string, width: number, height: number, value: number): SheetCell => ({
  title,
  width,
  height,
  pixels: new Uint8Array(width * height * 3).fill(value),
});

describe('a contact sheet', () => {
  const cells = [cell('A', 80, 100, 10), cell('B', 80, 100, 90), cell('C', 60, 100, 170)];
  const sheet = sheetOf(cells, 100);
  const data = new Uint8Array(sheet.width * sheet.height * 3);
  layCells(cells, sheet, data);
  const at = (x: number, y: number) => data[(y * sheet.width + x) * 3]!;

  it('holds every print whole, none over another', () => {
    cells.forEach(({ width, height, pixels }, i) => {
      const [left, top] = sheet.places[i]!;
      for (const [x, y] of [
        [0, 0],
        [width - 1, 0],
        [0, height - 1],
        [width - 1, height - 1],
      ] as const)
        expect(at(left + x, top + y)).toBe(pixels[0]);
    });
  });

  it('writes the title below each print', () => {
    cells.forEach(({ height }, i) => {
      const [left, top] = sheet.places[i]!;
      let dark = 0;
      for (let y = top + height + 10; y < top + height + 45; y++)
        for (let x = left; x < left + 30; x++) if (at(x, y) < 60) dark++;
      expect(dark).toBeGreaterThan(40);
    });
  });

  it('is about as wide as high', () => {
    const many = Array.from({ length: 16 }, (_, i) => cell(String(i), 100, 100, 50));
    const { width, height } = sheetOf(many, 100);
    expect(width / height).toBeGreaterThan(0.6);
    expect(width / height).toBeLessThan(1.7);
  });
});
