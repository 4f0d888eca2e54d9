import type { Ink } from '../../../src/graph/inks.ts';
import type { DrawingValue, PlatesValue, RegionsValue } from '../../../workers/engine/values.ts';
import { borders } from '../../../workers/kernels/borders.ts';
import { type Plane, pxToMm } from '../../../workers/kernels/plane.ts';
import { drawnPlane, emptyLabels, flatPlane } from './pictures.ts';

/** Where fills and lines lie, as a person would sketch it. */
export interface Sketch {
  width: number;
  height: number;
  ppi: number;
  /** Label of a pixel. */
  region(x: number, y: number): number;
  /** Coverage of the line; none when left out. */
  line?: (x: number, y: number) => number;
  /** What each region prints on every plate, 0..255, by label; the first entry is for label 0. */
  tints: readonly (readonly number[])[];
  inks: readonly Partial<Ink>[];
}

const LABS: readonly NonNullable<Ink['lab']>[] = [
  [85, 2, 60],
  [50, 50, 30],
  [20, 1, 1],
  [60, -20, -30],
];

/** Regions, plates and drawing of a sketch, with ids r1, r2, ... and p1, p2, ... */
export function fillsOf(sketch: Sketch): {
  regions: RegionsValue;
  plates: PlatesValue;
  drawing: DrawingValue;
} {
  const { width, height, ppi, tints } = sketch;
  const labels = emptyLabels(width, height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) labels.data[y * width + x] = sketch.region(x, y);
  const count = tints.length - 1;
  const touching = borders({ labels: labels.data, width, height, count });
  const mm = [pxToMm(width, ppi), pxToMm(height, ppi)] as const;
  const neighboursOf = (label: number) =>
    [...touching.a.keys()].flatMap((k) => {
      const [a, b] = [touching.a[k]!, touching.b[k]!];
      if (a !== label && b !== label) return [];
      return [{ label: a === label ? b : a, sharedMm: pxToMm(touching.length[k]!, ppi) }];
    });
  const table = Array.from({ length: count }, (_, i) => ({
    label: i + 1,
    areaMm2: 1,
    anchorMm: [0, 0] as [number, number],
    boxMm: [0, 0, ...mm] as [number, number, number, number],
    touchesFrame: false,
    neighbours: neighboursOf(i + 1),
    inside: null,
  }));
  const plates = sketch.inks.map((ink, p) => ({
    id: `p${p + 1}`,
    ink: { id: `p${p + 1}`, name: `Ink ${p + 1}`, lab: LABS[p]!, opacity: 0.005, ...ink } as Ink,
    order: p + 1,
    pass: p + 1,
    coverage: drawnPlane(width, height, (x, y) => tints[labels.data[y * width + x]!]![p]!),
  }));
  const line: Plane = sketch.line ? drawnPlane(width, height, sketch.line) : flatPlane(width, height);
  return {
    regions: {
      type: 'regions',
      labels,
      table,
      ids: table.map(({ label }) => `r${label}`),
      walls: [],
      openGaps: [],
      ppi,
      mm,
    },
    plates: { type: 'plates', plates, printing: {}, ppi, mm },
    drawing: { type: 'drawing', line, ppi, mm, artAt: 'trim' },
  };
}
