import { plateGrain as kind } from '../../src/nodes/plate-grain.ts';
import { evaluation } from '../engine/evaluation.ts';
import { latticeOf, mix } from '../kernels/lattice.ts';
import { pxToMm } from '../kernels/plane.ts';

export const plateGrain = evaluation(kind, async ({ settings, inputs, tools }) => {
  const { plates, area } = inputs;
  const lattice = latticeOf(settings.seed);
  const pixelMm = pxToMm(1, plates.ppi);
  const grained = plates.plates.map(async (plate) => {
    const strength = (settings.strengthPercentOf[plate.id] ?? settings.strengthPercent) / 100;
    const { width, height } = plate.coverage;
    const out = tools.plane(width, height);
    await tools.bands(
      'grain',
      {
        plate: plate.coverage,
        out,
        lattice,
        pixelMm,
        sizeMm: settings.sizeMm,
        strength,
        hardness: settings.hardness / 100,
        openSolids: settings.openSolidsPercent / 100,
        seed: mix(plate.order, settings.seed),
      },
      height,
    );
    if (!area) return { ...plate, coverage: out };
    const kept = tools.plane(width, height);
    await tools.bands('within', { before: plate.coverage, after: out, mask: area.mask, out: kept }, height);
    return { ...plate, coverage: kept };
  });
  return { plates: { ...plates, plates: await Promise.all(grained) } };
});
