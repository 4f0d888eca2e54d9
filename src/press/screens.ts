const MM_PER_INCH = 25.4;

/** A halftone screen as it lies on the sheet. */
export interface Screen {
  lpi: number;
  /** Anticlockwise from across the sheet. */
  angleDeg: number;
}

/** How a plate is, or is to be, turned into dots. */
export interface PlateScreen {
  /** `screened`: these plates hold the dots; `planned`: the press makes them. */
  how: 'screened' | 'planned';
  kind: 'am' | 'fm';
  /** AM: lines per inch, angle and shape of the dot. */
  lpi?: number;
  angleDeg?: number;
  dot?: 'round' | 'ellipse' | 'line';
  /** FM: side of a dot. */
  dotMm?: number;
  /** Whether the tone curve of the ink was taken off the tints here. */
  toneApplied: boolean;
}

/**
 * Period of the coarsest beat of two screens, mm: one over the shortest difference of their frequencies, the screens
 * being square. Infinity where they are alike.
 *
 * Source: 2 L sin(d/2) for equal screens, as in the trade's formulas of moire (D. Tollenaar 1945, from memory).
 */
export function beatPeriodMm(one: Screen, other: Screen): number {
  const turns = [0, 1, 2, 3].map((quarter) => {
    const apart = ((other.angleDeg - one.angleDeg + 90 * quarter) * Math.PI) / 180;
    const square = one.lpi ** 2 + other.lpi ** 2 - 2 * one.lpi * other.lpi * Math.cos(apart);
    return Math.sqrt(Math.max(0, square));
  });
  const perInch = Math.min(...turns);
  return perInch < 1e-6 ? Number.POSITIVE_INFINITY : MM_PER_INCH / perInch;
}

/**
 * Tones that one simple cell of device pixels can show, paper and solid with them: (dpi / lpi)^2 + 1, not rounded.
 *
 * Source: common formula of the trade.
 */
export function levelsOfCell(lpi: number, dpi: number): number {
  return (dpi / lpi) ** 2 + 1;
}

export interface FadeBands {
  /** Tones the device has between paper and solid. */
  levels: number;
  /** Steps that it shows along the fade. */
  steps: number;
  /** Width of one of them. */
  stepMm: number;
}

/**
 * The bands of a fade on a device whose cells are simple, not gathered to a supercell.
 *
 * @param fade tints in % at its ends and how far apart these are
 */
export function fadeBands(
  fade: { fromPercent: number; toPercent: number; lengthMm: number },
  { lpi, dpi }: { lpi: number; dpi: number },
): FadeBands {
  const levels = Math.floor(levelsOfCell(lpi, dpi));
  const share = Math.abs(fade.toPercent - fade.fromPercent) / 100;
  const steps = Math.max(1, Math.round(share * (levels - 1)));
  return { levels, steps, stepMm: fade.lengthMm / steps };
}

/** The strongest ink at 45 degrees, the next two 30 degrees to either side, the lightest at 0, then between them. */
const ANGLES = [45, 75, 15, 0, 60, 30, 82.5, 52.5, 22.5, 67.5, 37.5, 7.5];

/**
 * Usual angles for plates: the strongest ink at 45 degrees.
 *
 * Source: common practice for spot inks.
 *
 * @param lightness L* of each plate's solid
 */
export function usualAngles(lightness: readonly number[]): number[] {
  const byStrength = [...lightness.keys()].sort((a, b) => lightness[a]! - lightness[b]! || a - b);
  return lightness.map((_, plate) => ANGLES[byStrength.indexOf(plate) % ANGLES.length]!);
}
