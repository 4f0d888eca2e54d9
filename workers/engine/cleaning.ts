/** A mark that went as dust. */
export interface Speck {
  /** Left, top, right, bottom, mm. */
  boxMm: [number, number, number, number];
  placeMm: [number, number];
  areaMm2: number;
}

/** What Clean line found in a drawing and did to it. */
export interface Cleaning {
  /** Whether the light was evened out, and how much darker the darkest paper was than the brightest, 0..1. */
  light: { evened: boolean; spread: number };
  /** Which rule parted line from paper, and the coverage that it took for line, % (of even paper, where local). */
  threshold: { how: 'half' | 'whole-drawing' | 'local' | 'set'; levelPercent: number };
  /** How far it was turned, degrees clockwise. */
  turnedDeg: number;
  /** The marks that went, the largest of them one by one, largest first. */
  specks: { count: number; areaMm2: number; largest: readonly Speck[] };
  pinholes: { count: number; areaMm2: number };
}
