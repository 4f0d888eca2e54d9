import type { WholeName } from '../../../workers/engine/crew-api.ts';
import type { Tools } from '../../../workers/engine/evaluation.ts';
import { type Plane, pxToMm } from '../../../workers/kernels/plane.ts';
import { localRegions } from '../../unit/support/local-regions.ts';
import { SMALLEST } from './truth.ts';

/** Settings are in mm; ten pixels to each leave room for any gap of the benchmark. */
const PPI = 254;

export interface Choice {
  /** px */
  gap: number;
  /** px */
  roughness: number;
}

/** Regions of a line plane as the node finds them, one label a pixel. */
export async function regionsOf(line: Plane, { gap, roughness }: Choice): Promise<Uint32Array> {
  const mm = (px: number) => pxToMm(px, PPI);
  const settings = { gapMm: mm(gap), roughnessMm: mm(roughness), smallestMm2: SMALLEST * mm(1) ** 2 };
  const { regions } = await localRegions(line, PPI, settings, withoutOpenings);
  return regions.labels.data;
}

/** The openings that the node would report as left are not scored, and cost time. */
function withoutOpenings(tools: Tools): Tools {
  const none = new Float64Array(0);
  const openings = { width: none, x: none, y: none, sideA: none, sideB: none, area: none };
  const whole = (name: WholeName, args: never) =>
    name === 'openings' ? Promise.resolve(openings) : tools.whole(name, args);
  return { ...tools, whole: whole as typeof tools.whole };
}
