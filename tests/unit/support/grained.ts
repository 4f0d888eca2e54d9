import { plateGrain } from '../../../src/nodes/plate-grain.ts';
import type { PlatesValue } from '../../../workers/engine/values.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { plateGrain as evaluation } from '../../../workers/nodes/plate-grain.ts';
import type { Settings } from './jobs.ts';
import { localTools } from './local-tools.ts';

const INK = { id: 'soot', name: 'Soot', lab: [20, 1, 1] as [number, number, number], opacity: 0.02 };

/** Plates of these coverages as a value, in print order. */
export function platesOf(planes: readonly Plane[], ppi: number): PlatesValue {
  const { width, height } = planes[0]!;
  return {
    type: 'plates',
    ppi,
    mm: [(width * 25.4) / ppi, (height * 25.4) / ppi],
    printing: {} as PlatesValue['printing'],
    plates: planes.map((coverage, k) => ({
      id: `p${k + 1}`,
      ink: INK as PlatesValue['plates'][number]['ink'],
      order: k + 1,
      pass: 1,
      coverage,
    })),
  };
}

/** What Plate grain makes of plates. */
export async function grained(planes: readonly Plane[], ppi: number, settings: Settings): Promise<Plane[]> {
  const work = {
    settings: plateGrain.settings.parse(settings),
    inputs: { plates: platesOf(planes, ppi) },
    scale: 1,
    tools: localTools().tools,
  };
  const { plates } = (await evaluation.run(work)) as { plates: PlatesValue };
  return plates.plates.map(({ coverage }) => coverage);
}
