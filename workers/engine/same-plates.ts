import { BadInput } from '../../src/graph/complaint.ts';
import type { Plane } from '../kernels/plane.ts';
import type { PlatesValue } from './values.ts';

/**
 * @throws BadInput when plates and another picture that should lie on them differ in size
 */
export function samePlates(plates: PlatesValue, other: Plane): void {
  const plate = plates.plates[0]!.coverage;
  if (plate.width === other.width && plate.height === other.height) return;
  throw new BadInput(
    `the plates measure ${plate.width} x ${plate.height} px but the picture on them ${other.width} x ${other.height} px; both must come from one drawing`,
  );
}
