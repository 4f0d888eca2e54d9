import type { Tools } from '../engine/evaluation.ts';
import type { PlatesValue, ProofValue } from '../engine/values.ts';
import { ENCODING, LIGHT } from './screen-light.ts';

/** Most pixels of a picture on a screen; what a device images may have far more. */
const MOST_PIXELS = 30e6;

/** How many pixels, each way, become one of what is shown. */
function timesOf({ width, height }: { width: number; height: number }): number {
  return Math.max(1, Math.ceil(Math.sqrt((width * height) / MOST_PIXELS)));
}

/** A proof as large as can be shown, by box means in linear light. */
export async function proofToShow(proof: ProofValue, tools: Tools): Promise<ProofValue> {
  const times = timesOf(proof);
  if (times === 1) return proof;
  const [width, height] = [Math.ceil(proof.width / times), Math.ceil(proof.height / times)];
  const pixels = tools.bytes(width * height * 3);
  const shrink = {
    from: proof.pixels,
    width: proof.width,
    height: proof.height,
    to: pixels,
    toWidth: width,
    toHeight: height,
    light: LIGHT,
    encoding: ENCODING,
    ground: null,
  };
  await tools.bands('shrinkProof', shrink, height);
  return { ...proof, width, height, pixels, ppi: (proof.ppi * width) / proof.width };
}

/** One plate of plates, by its id, as large as can be shown, by box means; undefined where there is none. */
export async function plateToShow({ plates, ppi }: PlatesValue, id: string, tools: Tools) {
  const plate = plates.find((each) => each.id === id);
  if (!plate) return undefined;
  const { coverage } = plate;
  const times = timesOf(coverage);
  if (times === 1) return { coverage, ppi };
  const small = tools.plane(Math.ceil(coverage.width / times), Math.ceil(coverage.height / times));
  await tools.bands('reduceCoverage', { from: coverage, to: small, scale: times }, small.height);
  return { coverage: small, ppi: ppi / times };
}
