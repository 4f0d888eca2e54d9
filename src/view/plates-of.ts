import type { Graph, Job } from '../graph/job.ts';
import type { Recipe } from '../graph/recipe.ts';
import { resolveInkLab } from '../ink/ink-lab.ts';
import { screenOf } from '../ink/screen.ts';
import { inkSet } from '../nodes/ink-set.ts';
import { strings } from './strings.ts';

/** A plate as the readout names it. */
export interface NamedPlate {
  id: string;
  ink: string;
  /** Colour of the ink's solid on screen. */
  colour: string;
}

const known = new WeakMap<Graph, NamedPlate[]>();

/** The job's plates in print order; none when it has no Ink set. Read once for each graph: tinting changes none. */
export function platesOf({ graph }: Pick<Job, 'graph'>): readonly NamedPlate[] {
  const plates = known.get(graph) ?? readPlates(graph);
  known.set(graph, plates);
  return plates;
}

function readPlates(graph: Graph): NamedPlate[] {
  const node = graph.nodes.find(({ kind }) => kind === inkSet.kind);
  if (!node) return [];
  const { inks, plates } = inkSet.settings.parse(node.settings);
  return plates.map(({ id, ink: inkId }) => {
    const ink = inks.find((each) => each.id === inkId);
    return { id, ink: ink?.name ?? inkId, colour: ink ? screenOf(resolveInkLab(ink)).hex : '' };
  });
}

/** A recipe in words. */
export function recipeText(recipe: Recipe, plates: readonly NamedPlate[]): string {
  const tints = plates
    .filter(({ id }) => (recipe[id] ?? 0) > 0)
    .map(({ id, ink }) => strings.tint(ink, recipe[id]!));
  return tints.length > 0 ? tints.join(', ') : strings.paper;
}
