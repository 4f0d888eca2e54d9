import type { Complaint } from '../../../src/graph/complaint.ts';
import { cleanLine as kind } from '../../../src/nodes/clean-line.ts';
import type { Cleaning } from '../../../workers/engine/cleaning.ts';
import type { DrawingValue } from '../../../workers/engine/values.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { cleanLine } from '../../../workers/nodes/clean-line.ts';
import type { Settings } from './jobs.ts';
import { localTools } from './local-tools.ts';

export interface Cleaned {
  line: Plane;
  cleaning: Cleaning;
  complaints: Complaint[];
}

/** What Clean line makes of a line at a resolution, worked out in this thread. */
export async function cleanHere(line: Plane, ppi: number, settings: Settings = {}): Promise<Cleaned> {
  const { tools, complaints } = localTools();
  const mm = [(line.width * 25.4) / ppi, (line.height * 25.4) / ppi] as const;
  const drawing: DrawingValue = { type: 'drawing', line, ppi, mm, artAt: 'trim' };
  const work = { settings: kind.settings.parse(settings), inputs: { drawing }, scale: 1, tools };
  const out = (await cleanLine.run(work)).drawing as DrawingValue;
  return { line: out.line, cleaning: out.cleaning!, complaints };
}
