import type { Complaint } from '../../graph/complaint.ts';
import type { Press } from '../../graph/press.ts';
import { figureOf } from '../profiles.ts';
import { beatPeriodMm, fadeBands, type PlateScreen } from '../screens.ts';
import type { PrintedRegion } from './tint-faults.ts';

/** A plate with the dots it is, or is to be, made of. */
export interface ScreenedPlate {
  id: string;
  screen: PlateScreen;
}

/** A beat of so many dots or more is seen as a pattern (common practice, no source). */
const SEEN_FROM_DOTS = 4;
/** A screen holds a dot on so many threads (common practice, no source). */
const LEAST_THREADS = 4;
/** Steps of a fade narrower than this melt into one another (common practice, no source). */
const SEEN_BAND_MM = 2;

const MM_PER_INCH = 25.4;

/** Pairs of AM screens whose beat is seen. */
export function moireFaults(plates: readonly ScreenedPlate[]): Complaint[] {
  const am = plates.flatMap(({ id, screen: { kind, lpi, angleDeg } }) =>
    kind === 'am' && lpi !== undefined && angleDeg !== undefined ? [{ id, lpi, angleDeg }] : [],
  );
  return am.flatMap((one, i) =>
    am.slice(i + 1).flatMap((other): Complaint[] => {
      const beat = beatPeriodMm(one, other);
      const period = MM_PER_INCH / Math.min(one.lpi, other.lpi);
      if (beat === Number.POSITIVE_INFINITY)
        return [
          {
            code: 'screens-alike',
            severity: 'warning',
            message: `Plates ${one.id} and ${other.id} have one screen: their dots fall on or beside each other as the register goes, and the colour moves with it. Turn one of them by 30 degrees.`,
            plate: other.id,
          },
        ];
      if (beat < SEEN_FROM_DOTS * period) return [];
      return [
        {
          code: 'moire',
          severity: 'warning',
          message: `The screens of plates ${one.id} and ${other.id} beat every ${beat.toFixed(1)} mm: a pattern shows where both print tints. Turn one of them by 30 degrees, or give both one ruling.`,
          measure: Math.round(beat * 10) / 10,
          plate: other.id,
        },
      ];
    }),
  );
}

/** Rulings too fine for the mesh that carries them. */
export function meshFaults(plates: readonly ScreenedPlate[], press: Press): Complaint[] {
  const mesh = figureOf(press, 'meshPerCm');
  if (mesh === null) return [];
  return plates.flatMap(({ id, screen: { lpi } }): Complaint[] => {
    const threads = lpi === undefined ? Number.POSITIVE_INFINITY : (mesh * 2.54) / lpi;
    if (threads >= LEAST_THREADS) return [];
    return [
      {
        code: 'mesh-coarse',
        severity: 'warning',
        message: `Plate ${id} has ${lpi} lines per inch on a mesh of ${mesh} threads per cm: ${threads.toFixed(1)} threads a dot, where ${LEAST_THREADS} hold it. Use a finer mesh or a coarser ruling.`,
        measure: Math.round(threads * 10) / 10,
        plate: id,
      },
    ];
  });
}

/** Fades that a press with simple cells breaks up into bands; our own screens have finer steps. */
export function bandFaults(
  plates: readonly ScreenedPlate[],
  regions: readonly PrintedRegion[],
  dpi: number,
): Complaint[] {
  const planned = plates.filter(({ screen: { how, lpi } }) => how === 'planned' && lpi !== undefined);
  return planned.flatMap(({ id, screen }) =>
    regions.flatMap(({ id: region, fade, anchorMm }): Complaint[] => {
      if (!fade) return [];
      const [fromPercent, toPercent] = [fade.from[id] ?? 0, fade.to[id] ?? 0];
      if (fromPercent === toPercent) return [];
      const lengthMm = lengthOf(fade.pathMm);
      const { steps, stepMm } = fadeBands({ fromPercent, toPercent, lengthMm }, { lpi: screen.lpi!, dpi });
      if (stepMm < SEEN_BAND_MM) return [];
      return [
        {
          code: 'fade-bands',
          severity: 'warning',
          message: `The fade from ${fromPercent} to ${toPercent} % on plate ${id} has ${steps} steps of ${stepMm.toFixed(1)} mm at ${screen.lpi} lpi and ${Math.round(dpi)} dpi: bands show. Shorten it, widen its tints, or screen it with Halftone.`,
          placeMm: [...anchorMm] as [number, number],
          measure: Math.round(stepMm * 10) / 10,
          plate: id,
          region,
        },
      ];
    }),
  );
}

function lengthOf(path: readonly (readonly [number, number])[]): number {
  return path.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - path[i]![0], y - path[i]![1]), 0);
}
