import type { Complaint } from '../../../src/graph/complaint.ts';
import { closedRegions as kind } from '../../../src/nodes/closed-regions.ts';
import type { Tools } from '../../../workers/engine/evaluation.ts';
import type { DrawingValue, RegionsValue } from '../../../workers/engine/values.ts';
import { type Plane, pxToMm } from '../../../workers/kernels/plane.ts';
import { closedRegions } from '../../../workers/nodes/closed-regions.ts';
import { localTools } from './local-tools.ts';

/** What Closed regions makes of a line plane, in this thread; settings left out are the defaults. */
export async function localRegions(
  line: Plane,
  ppi: number,
  settings: object = {},
  change: (tools: Tools) => Tools = (tools) => tools,
): Promise<{ regions: RegionsValue; complaints: Complaint[] }> {
  const { tools, complaints } = localTools();
  const mm = [pxToMm(line.width, ppi), pxToMm(line.height, ppi)] as const;
  const drawing: DrawingValue = { type: 'drawing', line, ppi, mm, artAt: 'trim' };
  const { regions } = await closedRegions.run({
    settings: kind.settings.parse(settings),
    inputs: { drawing },
    colourway: {},
    scale: 1,
    tools: change(tools),
  });
  return { regions: regions as RegionsValue, complaints };
}
