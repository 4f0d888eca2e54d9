import type { Complaint } from '../../../src/graph/complaint.ts';
import { halftone as kind } from '../../../src/nodes/halftone.ts';
import type { PlatesValue } from '../../../workers/engine/values.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { halftone } from '../../../workers/nodes/halftone.ts';
import { platesOf } from './grained.ts';
import type { Settings } from './jobs.ts';
import { localTools } from './local-tools.ts';

/** What Halftone makes of plates. */
export async function halftoned(
  planes: readonly Plane[],
  ppi: number,
  settings: Settings = {},
  { scale = 1, value = {} }: { scale?: number; value?: Partial<PlatesValue> } = {},
): Promise<{ plates: PlatesValue; complaints: Complaint[] }> {
  const { tools, complaints } = localTools();
  const inputs = { plates: { ...platesOf(planes, ppi), ...value } };
  const work = { settings: kind.settings.parse(settings), inputs, scale, tools };
  const { plates } = (await halftone.run(work)) as { plates: PlatesValue };
  return { plates, complaints };
}

/** One plate, halftoned. */
export async function dotsOf(plane: Plane, ppi: number, settings: Settings = {}): Promise<Plane> {
  const { plates } = await halftoned([plane], ppi, settings);
  return plates.plates[0]!.coverage;
}
