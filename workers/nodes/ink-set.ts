import { BadInput } from '../../src/graph/complaint.ts';
import { inkSet as kind } from '../../src/nodes/ink-set.ts';
import { evaluation } from '../engine/evaluation.ts';

export const inkSet = evaluation(kind, async ({ settings }) => {
  const double = settings.inks.find(({ id }, i) => settings.inks.findIndex((ink) => ink.id === id) !== i);
  if (double) throw new BadInput(`two inks are called "${double.id}"; give one another id`);
  const inks = new Map(settings.inks.map((ink) => [ink.id, ink]));
  const seen = new Set<string>();
  const plates = settings.plates.map((plate, i) => {
    const ink = inks.get(plate.ink);
    if (!ink)
      throw new BadInput(
        `plate "${plate.id}" prints in the ink "${plate.ink}", which the set does not hold; it holds ${[...inks.keys()].join(', ')}`,
      );
    if (seen.has(plate.id)) throw new BadInput(`two plates are called "${plate.id}"; give one another id`);
    seen.add(plate.id);
    return { id: plate.id, ink, order: i + 1, pass: plate.pass };
  });
  const passes = plates.map((plate) => plate.pass);
  if (passes.some((pass, i) => i > 0 && pass < passes[i - 1]!))
    throw new BadInput('the passes of the plates must not fall along the print order');
  return { inks: { type: 'inks', plates, takeUp: settings.takeUpPercent / 100, readOn: settings.readOn } };
});
