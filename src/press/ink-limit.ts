import type { Recipe } from '../graph/recipe.ts';

/** How much ink a press takes at one spot, %. */
export interface InkLimits {
  /** The most of single plates. */
  mostOf: Readonly<Record<string, number>>;
  /** The most of all plates together; null for no limit. */
  total: number | null;
  /** Id of the plate that gives way first; none where all give way alike. */
  yieldsFirst: string;
}

/**
 * A recipe brought under the limits: first each plate under its own; then the plate that yields first gives up to all
 * of its tint, and what is still too much comes off the other plates in proportion. Tints in %, to a tenth downwards.
 */
export function limited(recipe: Recipe, { mostOf, total, yieldsFirst }: InkLimits): Recipe {
  const capped = Object.fromEntries(
    Object.entries(recipe).map(([plate, tint]) => [plate, Math.min(tint, mostOf[plate] ?? 100)]),
  );
  const sum = totalOf(capped);
  if (total === null || sum <= total) return capped;
  const given = Math.min(capped[yieldsFirst] ?? 0, sum - total);
  const first = given > 0 ? { ...capped, [yieldsFirst]: capped[yieldsFirst]! - given } : capped;
  const kept = first[yieldsFirst] ?? 0;
  const others = sum - given - kept;
  const share = others <= 0 ? 1 : Math.min(1, (total - kept) / others);
  return Object.fromEntries(
    Object.entries(first).map(([plate, tint]) => [
      plate,
      tenths(plate === yieldsFirst ? tint : tint * share),
    ]),
  );
}

/** All tints of a recipe together, %. */
export function totalOf(recipe: Recipe): number {
  return Object.values(recipe).reduce((sum, tint) => sum + tint, 0);
}

function tenths(tint: number): number {
  return Math.floor(tint * 10 + 1e-6) / 10;
}
