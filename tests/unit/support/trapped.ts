import { trap as kind } from '../../../src/nodes/trap.ts';
import type { PlatesValue } from '../../../workers/engine/values.ts';
import { trap } from '../../../workers/nodes/trap.ts';
import { fillsOf, type Sketch } from './fills.ts';
import type { Settings } from './jobs.ts';
import { localTools } from './local-tools.ts';

/** What Trap makes of a sketch. */
export async function trapped(sketch: Sketch, settings: Settings = {}): Promise<PlatesValue> {
  const inputs = fillsOf(sketch);
  const work = { settings: kind.settings.parse(settings), inputs, scale: 1, tools: localTools().tools };
  const { plates } = (await trap.run(work)) as { plates: PlatesValue };
  return plates;
}
