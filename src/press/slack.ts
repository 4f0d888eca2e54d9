import type { Lab } from '../graph/inks.ts';

/** How far a plate may drift in one direction before a fault shows. */
export interface SlackWay {
  /** Unit vector across the border: to the right and down the sheet. */
  normal: [number, number];
  slackMm: number;
  placeMm: [number, number];
}

/** What shows when one plate drifts at one border. */
export interface SlackBorder {
  /** Id of the plate that drifts. */
  plate: string;
  /** Ids of the regions on either side; twice the same against the line of a region, or within it. */
  between: [string, string];
  /** `mark`: an edge within a region, laid by hand or from a picture. */
  against: 'fill' | 'line' | 'mark';
  shows: 'paper' | 'overprint';
  /** What shows, as predicted, and how far that is from both sides, CIEDE2000. */
  lab: Lab;
  hex: string;
  distance: number;
  /** The least slack in each direction, of up to eight. */
  ways: SlackWay[];
}

export interface SlackLeast {
  slackMm: number;
  placeMm: [number, number];
}

/** Register slack of a job, in mm on the sheet. */
export interface SlackReport {
  version: 1;
  /** Farther than this nothing was looked for. */
  reachMm: number;
  /** Size of a pixel: how exact the figures are. */
  pixelMm: number;
  plates: { id: string; paper: SlackLeast | null; overprint: SlackLeast | null }[];
  borders: SlackBorder[];
}

/** How far plates may drift on a press. */
export interface Tolerance {
  alongMm: number;
  acrossMm: number;
  /** Whether the sheet is fed down or across the picture. */
  feed: 'down' | 'across';
}

/**
 * How far a plate may drift towards a direction: the edge of the ellipse of what it may along and across the feed.
 * For a straight border with this normal it is exactly how far the plate may move over it.
 */
export function driftTowards([x, y]: SlackWay['normal'], { alongMm, acrossMm, feed }: Tolerance): number {
  const [right, down] = feed === 'down' ? [acrossMm, alongMm] : [alongMm, acrossMm];
  return Math.sqrt(right * right * x * x + down * down * y * y);
}

export interface Shortfall {
  way: SlackWay;
  /** How far the plate may drift there. */
  driftMm: number;
  /** How much of that shows, mm. */
  shortMm: number;
}

/** Where a border fails most on a press; null where it holds. */
export function shortfallOf(border: SlackBorder, tolerance: Tolerance): Shortfall | null {
  let worst: Shortfall | null = null;
  for (const way of border.ways) {
    const driftMm = driftTowards(way.normal, tolerance);
    const shortMm = driftMm - way.slackMm;
    if (shortMm > 1e-9 && (!worst || shortMm > worst.shortMm)) worst = { way, driftMm, shortMm };
  }
  return worst;
}
