import { type HandMark, handMarks as kind, shareOfWidth } from '../../src/nodes/hand-marks.ts';
import { evaluation } from '../engine/evaluation.ts';
import { latticeOf } from '../kernels/lattice.ts';
import type { Mark } from '../kernels/mark-plate.ts';
import { mmToPx, pxToMm } from '../kernels/plane.ts';
import { keptWithin } from './kept-within.ts';

/** Marks of one job share a lattice; each starts elsewhere on it. */
const LATTICE_SEED = 11;

export const handMarks = evaluation(kind, async ({ settings, inputs, tools }) => {
  const { plates, area } = inputs;
  const known = new Set(plates.plates.map(({ id }) => id));
  const strangers = new Set(settings.marks.flatMap((mark) => mark.plates).filter((id) => !known.has(id)));
  if (strangers.size > 0)
    tools.complain({
      code: 'mark-plate-missing',
      severity: 'warning',
      message: `Hand marks name plates that are not there (${[...strangers].join(', ')}); they are kept and do not print.`,
    });
  const lattice = latticeOf(LATTICE_SEED);
  const pixelMm = pxToMm(1, plates.ppi);
  const marked = plates.plates.map(async (plate) => {
    const marks = settings.marks
      .map((mark, i) => ({ mark, seed: i + 1 }))
      .filter(({ mark }) => mark.plates.length === 0 || mark.plates.includes(plate.id))
      .map(({ mark, seed }) => markOf(mark, seed, plates.ppi));
    if (marks.length === 0) return plate;
    const { width, height } = plate.coverage;
    const out = tools.plane(width, height);
    await tools.bands('markPlate', { plate: plate.coverage, out, marks, lattice, pixelMm }, height);
    if (!area) return { ...plate, coverage: out };
    return { ...plate, coverage: await keptWithin(plate.coverage, out, area.mask, tools) };
  });
  return { plates: { ...plates, plates: await Promise.all(marked) } };
});

function markOf({ does, tintPercent, widthMm, edge, points }: HandMark, seed: number, ppi: number): Mark {
  const placed = points.map(([x, y, pressure]) => {
    const share = shareOfWidth(pressure);
    return [mmToPx(x, ppi), mmToPx(y, ppi), (mmToPx(widthMm, ppi) * share) / 2] as const;
  });
  const least = (axis: 0 | 1) => Math.min(...placed.map((point) => point[axis] - point[2])) - 1;
  const most = (axis: 0 | 1) => Math.max(...placed.map((point) => point[axis] + point[2])) + 1;
  return {
    does,
    edge,
    seed,
    tint: Math.round((tintPercent * 255) / 100),
    points: placed,
    box: [least(0), least(1), most(0), most(1)],
  };
}
