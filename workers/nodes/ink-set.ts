import { BadInput } from '../../src/graph/complaint.ts';
import { refuseDoubles } from '../../src/graph/doubles.ts';
import { inkSet as kind, printingOf } from '../../src/nodes/ink-set.ts';
import { evaluation } from '../engine/evaluation.ts';

export const inkSet = evaluation(kind, async ({ settings, tools }) => {
  refuseDoubles('inks', settings.inks);
  refuseDoubles('plates', settings.plates);
  const inks = new Map(settings.inks.map((ink) => [ink.id, ink]));
  const plates = settings.plates.map((plate, i) => {
    const ink = inks.get(plate.ink);
    if (!ink)
      throw new BadInput(
        `plate "${plate.id}" prints in the ink "${plate.ink}", which the set does not hold; it holds ${[...inks.keys()].join(', ')}`,
      );
    return { id: plate.id, ink, order: i + 1, pass: plate.pass };
  });
  const passes = plates.map((plate) => plate.pass);
  if (passes.some((pass, i) => i > 0 && pass < passes[i - 1]!))
    throw new BadInput('the passes of the plates must not fall along the print order');
  const printing = printingOf(settings);
  const unread = settings.measured.length - printing.measured!.length;
  if (unread > 0)
    tools.complain({
      code: 'reading-left-out',
      severity: 'note',
      message: `${unread} measured colours are of inks that no plate prints; they are kept and do not count.`,
    });
  return { inks: { type: 'inks', plates, printing } };
});
