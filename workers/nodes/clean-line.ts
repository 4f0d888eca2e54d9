import { cleanLine as kind } from '../../src/nodes/clean-line.ts';
import { evaluation } from '../engine/evaluation.ts';
import { mmToPx, type Plane } from '../kernels/plane.ts';
import { evened } from './clean-light.ts';
import { despeckled, pinholesFilled } from './clean-specks.ts';
import { isClean, parted } from './clean-threshold.ts';
import { straightened } from './clean-tilt.ts';
import { weighed } from './clean-weight.ts';

/** Paper that shows through the line of a scan by less than this is a fault of the scan. */
const USUAL_PINHOLE_MM2 = 0.01;

export const cleanLine = evaluation(kind, async ({ settings, inputs, tools }) => {
  const { drawing } = inputs;
  const { ppi } = drawing;
  /** Lets the line of the step before go, where this step made another. */
  const on = (before: Plane, after: Plane): Plane => {
    if (after !== before) tools.free(before.data);
    return after;
  };
  const counts = await tools.whole('histogram', { data: drawing.line.data });
  const clean = isClean(counts);
  const sheet = await evened(drawing.line, counts, clean, settings.light, ppi, tools);
  const level = await straightened(sheet.line, settings, tools);
  const straight = on(sheet.line, level.line);
  const { line, threshold } = await parted(straight, clean, settings, ppi, tools);
  const swept = await despeckled(on(straight, line), settings.speckMm2, ppi, tools);
  const smallest = settings.pinholeMm2 ?? (clean ? 0 : USUAL_PINHOLE_MM2);
  const filled = await pinholesFilled(on(line, swept.line), smallest, ppi, tools);
  const solid = on(swept.line, filled.line);
  const heavier = on(solid, await weighed(solid, mmToPx(settings.heavierMm, ppi), tools));
  const { light } = sheet;
  const { turnedDeg } = level;
  const { specks } = swept;
  const { pinholes } = filled;
  return {
    drawing: { ...drawing, line: heavier, cleaning: { light, threshold, turnedDeg, specks, pinholes } },
  };
});
