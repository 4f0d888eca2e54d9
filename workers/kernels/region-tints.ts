import type { LabelPlane, Plane } from './plane.ts';

export interface RegionTintsArgs {
  labels: LabelPlane;
  plate: Plane;
  /** Highest label. */
  count: number;
}

/** Mean coverage 0..255 of a plate by label; 0 for labels that have no pixel. */
export function regionTints({ labels, plate, count }: RegionTintsArgs): Float64Array {
  const names = labels.data;
  const coverage = plate.data;
  const sums = new Float64Array(count + 1);
  const pixels = new Uint32Array(count + 1);
  for (let i = 0; i < names.length; ) {
    const label = names[i]!;
    const start = i;
    let sum = 0;
    for (; i < names.length && names[i] === label; i++) sum += coverage[i]!;
    sums[label]! += sum;
    pixels[label]! += i - start;
  }
  return sums.map((sum, label) => (pixels[label] === 0 ? 0 : sum / pixels[label]!));
}
