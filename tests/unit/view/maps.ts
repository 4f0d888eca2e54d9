import type { RegionMap } from '../../../workers/client.ts';

/** A map of 1 mm pixels from rows of digits, 0 for no region; region n is called `rn`. */
export function mapOf(...rows: string[]): RegionMap {
  const width = rows[0]!.length;
  const labels = Uint32Array.from(rows.join(''), Number);
  const count = Math.max(...labels);
  const regions = Array.from({ length: count }, (_, i) => {
    const pixels = [...labels.keys()].filter((at) => labels[at] === i + 1);
    const xs = pixels.map((at) => at % width);
    const ys = pixels.map((at) => Math.floor(at / width));
    const [left, top] = [Math.min(...xs), Math.min(...ys)];
    const [right, bottom] = [Math.max(...xs) + 1, Math.max(...ys) + 1];
    const anchorMm: [number, number] = [(left + right) / 2, (top + bottom) / 2];
    const boxMm: [number, number, number, number] = [left, top, right, bottom];
    return { id: `r${i + 1}`, areaMm2: pixels.length, anchorMm, boxMm, touchesFrame: false, inside: null };
  });
  const register = { labelMap: null, next: count + 1, regions: [] };
  const size = { width, height: rows.length, ppi: 25.4, walls: [], openGaps: [] };
  return { ...size, mm: [width, rows.length], labels, regions, register, complaints: [] };
}
