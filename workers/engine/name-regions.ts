import { assignIds, type RegionRegister } from '../../src/graph/register.ts';
import type { Value } from './values.ts';

/** Regions with the ids that the job's register gives them. */
export function nameRegions(value: Value, register: RegionRegister): Value {
  if (value.type !== 'regions') throw new Error(`${value.type} has no regions to name`);
  return { ...value, ids: assignIds(value.table, register).ids };
}
