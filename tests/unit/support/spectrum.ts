import type { Plane } from '../../../workers/kernels/plane.ts';

/** In place, `length` a power of two (Cooley & Tukey 1965). */
function fft(re: Float64Array, im: Float64Array): void {
  const n = re.length;
  for (let i = 1, j = 0; i < n; i++) {
    let bit = n >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i < j) {
      [re[i], re[j]] = [re[j]!, re[i]!];
      [im[i], im[j]] = [im[j]!, im[i]!];
    }
  }
  for (let size = 2; size <= n; size *= 2)
    for (let start = 0; start < n; start += size)
      for (let k = 0; k < size / 2; k++) {
        const turn = (-2 * Math.PI * k) / size;
        const [c, s] = [Math.cos(turn), Math.sin(turn)];
        const [p, q] = [start + k, start + k + size / 2];
        const [u, v] = [re[q]! * c - im[q]! * s, re[q]! * s + im[q]! * c];
        [re[q], im[q]] = [re[p]! - u, im[p]! - v];
        re[p]! += u;
        im[p]! += v;
      }
}

/** Power of a square plane, its side a power of two, averaged over rings of one cycle a side. */
export function ringPowers({ width: n, data }: Plane): Float64Array {
  const mean = data.reduce((sum, value) => sum + value, 0) / data.length;
  const hann = Float64Array.from(
    { length: n },
    (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / n),
  );
  const re = Float64Array.from(data, (value, i) => (value - mean) * hann[i % n]! * hann[Math.floor(i / n)]!);
  const im = new Float64Array(n * n);
  for (const [step, stride] of [
    [1, n],
    [n, 1],
  ] as const)
    for (let line = 0; line < n; line++) {
      const a = Float64Array.from({ length: n }, (_, k) => re[line * stride + k * step]!);
      const b = Float64Array.from({ length: n }, (_, k) => im[line * stride + k * step]!);
      fft(a, b);
      for (let k = 0; k < n; k++) {
        re[line * stride + k * step] = a[k]!;
        im[line * stride + k * step] = b[k]!;
      }
    }
  const power = new Float64Array(n / 2);
  const count = new Float64Array(n / 2);
  for (let y = 0; y < n; y++)
    for (let x = 0; x < n; x++) {
      const ring = Math.round(Math.hypot(Math.min(x, n - x), Math.min(y, n - y)));
      if (ring >= n / 2) continue;
      power[ring]! += re[y * n + x]! ** 2 + im[y * n + x]! ** 2;
      count[ring]!++;
    }
  return power.map((sum, ring) => sum / count[ring]!);
}

/** The period in px at which the power per ring peaks: rings within 8 % of one another are taken together. */
export function peakPeriodPx(plane: Plane): number {
  const power = ringPowers(plane);
  let best = 0;
  let at = 0;
  for (let ring = 4; ring < power.length * 0.9; ring++) {
    const reach = Math.max(1, Math.round(ring * 0.08));
    let sum = 0;
    for (let k = ring - reach; k <= ring + reach; k++) sum += power[Math.min(power.length - 1, k)]!;
    if (sum / (2 * reach + 1) <= best) continue;
    best = sum / (2 * reach + 1);
    at = ring;
  }
  return plane.width / at;
}
