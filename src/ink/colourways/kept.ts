import type { ProposalRules } from '../../graph/proposal-rules.ts';
import type { Classes } from './classes.ts';
import type { Palette } from './layout-cost.ts';

/** How well a layout keeps the rules. */
export interface Kept {
  /** Share of the length of borders whose sides differ enough, 0..1. */
  contrast: number;
  /** The neighbours most alike, as ids of regions, and how far apart they are; null without borders. */
  nearest: { regions: [string, string]; distance: number } | null;
  /** Share of the area that each recipe of the palette covers, %. */
  sharesPercent: number[];
  /** By how much the shares asked for are missed together, points of %. */
  shareErrorPercent: number;
  /** Share of what touches the frame that prints as asked, 0..1; 1 where nothing was asked. */
  frame: number;
  /** All tints together, as a mean over the sheet, %. */
  totalPercent: number;
}

/** Tells how well a layout keeps the rules. */
export function keptOf(
  layout: Int32Array,
  { classes, borders }: Classes,
  palette: Palette,
  rules: ProposalRules,
): Kept {
  const { apart, size, totals } = palette;
  const areas = classes.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
  const distances = borders.map(({ a, b }) => apart[layout[a]! * size + layout[b]!]!);
  const shared = borders.reduce((sum, { sharedMm }) => sum + sharedMm, 0);
  const enough = borders.reduce(
    (sum, { sharedMm }, i) => (distances[i]! >= rules.contrast ? sum + sharedMm : sum),
    0,
  );
  const least = distances.reduce((best, distance, i) => (distance < distances[best]! ? i : best), 0);
  const sharesPercent = rules.palette.map((_, colour) => {
    const covered = classes.reduce((sum, { areaMm2 }, i) => (layout[i] === colour ? sum + areaMm2 : sum), 0);
    return (100 * covered) / areas;
  });
  const frames = classes.reduce((sum, { frameMm2 }) => sum + frameMm2, 0);
  const asAsked = classes.reduce(
    (sum, { frameMm2 }, i) => (layout[i] === rules.frame ? sum + frameMm2 : sum),
    0,
  );
  return {
    contrast: shared > 0 ? enough / shared : 1,
    nearest:
      borders.length > 0
        ? {
            regions: [classes[borders[least]!.a]!.regions[0]!, classes[borders[least]!.b]!.regions[0]!],
            distance: distances[least]!,
          }
        : null,
    sharesPercent,
    shareErrorPercent: rules.palette.reduce(
      (sum, { sharePercent }, i) =>
        sharePercent === undefined ? sum : sum + Math.abs(sharePercent - sharesPercent[i]!),
      0,
    ),
    frame: rules.frame === null || frames === 0 ? 1 : asAsked / frames,
    totalPercent: classes.reduce((sum, { areaMm2 }, i) => sum + areaMm2 * totals[layout[i]!]!, 0) / areas,
  };
}
