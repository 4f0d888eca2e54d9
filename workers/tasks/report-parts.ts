import type { Report } from '../../src/graph/report.ts';
import type { Value } from '../engine/values.ts';

/** Three decimals: micrometres, thousandths of a percent. */
export function mm3(value: number): number {
  return Math.round(value * 1000) / 1000;
}

function point(place: readonly [number, number]): [number, number] {
  return [mm3(place[0]), mm3(place[1])];
}

/** The size of the picture under a value. */
export function drawingOf(value: Value): Report['drawing'] {
  if (value.type !== 'drawing' && value.type !== 'regions' && value.type !== 'plates')
    throw new Error(`${value.type} has no size`);
  const plane =
    value.type === 'drawing'
      ? value.line
      : value.type === 'regions'
        ? value.labels
        : value.plates[0]!.coverage;
  return { width: plane.width, height: plane.height, ppi: mm3(value.ppi), mm: point(value.mm) };
}

/** Rows of the report's region table; none where the job has no regions. */
export function reportRegions(regions: Value | undefined, recipes: Value | undefined): Report['regions'] {
  if (regions?.type !== 'regions' || recipes?.type !== 'recipes') return [];
  return regions.table.map((region, i) => ({
    id: regions.ids[i]!,
    label: region.label,
    areaMm2: mm3(region.areaMm2),
    anchorMm: point(region.anchorMm),
    touchesFrame: region.touchesFrame,
    recipe: recipes.recipes[i]!,
  }));
}
