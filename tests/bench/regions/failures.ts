import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import type { Trial } from './sets.ts';
import { LINE } from './truth.ts';

/** Whether anything in a trial is worth a look. */
export function hasFailed({ score, set }: Trial): boolean {
  const poor = score.good < score.regions;
  return (
    score.leaks.length > 0 || score.surplus.length > 0 || poor || (set === 'uncut' && score.lost.length > 0)
  );
}

/** Writes true and found regions side by side: true ones that failed, surplus ones and leaking cuts stand out. */
export function writeFailure(folder: string, name: string, strokes: number, trial: Trial): void {
  const { line, truth, found, score, cuts } = trial;
  const { width, height, data } = line;
  const picture = new PNG({ width: 2 * width, height });
  const surplus = new Set(score.surplus);
  const paint = (x: number, y: number, colour: readonly number[]) => {
    picture.data.set([...colour, 255], (y * 2 * width + x) * 4);
  };
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      const [t, f] = [truth.labels[i]!, found[i]!];
      const isLine = data[i]! >= LINE;
      const failed = t > 0 && (score.iou[t]! < 0.95 || score.lost.includes(t));
      paint(x, y, isLine ? [0, 0, 0] : failed ? [255, 60, 60] : paleOf(t));
      paint(width + x, y, isLine ? [0, 0, 0] : surplus.has(f) ? [255, 60, 60] : paleOf(f));
    }
  for (const [k, { x, y }] of cuts.entries()) {
    const colour = score.leaks.includes(k) ? [255, 0, 255] : [0, 90, 255];
    for (let d = -6; d <= 6; d++)
      for (const [u, v] of [
        [x + d, y],
        [x, y + d],
      ] as const)
        if (u >= 0 && v >= 0 && u < width && v < height) paint(u, v, colour);
  }
  mkdirSync(folder, { recursive: true });
  const file = `${trial.set.replace(/\W+/g, '-')}-x${strokes}-${name}.png`;
  writeFileSync(join(folder, file), PNG.sync.write(picture));
}

/** A pale colour of its own for each label. */
function paleOf(label: number): [number, number, number] {
  if (label === 0) return [255, 255, 255];
  const mixed = Math.imul(label, 0x9e3779b1) >>> 0;
  return [170 + (mixed % 80), 170 + ((mixed >>> 8) % 80), 170 + ((mixed >>> 16) % 80)];
}
