import { BadInput } from './complaint.ts';

/** @throws BadInput when two of a list have one id */
export function refuseDoubles(what: string, list: readonly { id: string }[]): void {
  const seen = new Set<string>();
  for (const { id } of list) {
    if (seen.has(id)) throw new BadInput(`two ${what} are called "${id}"; give one another id`);
    seen.add(id);
  }
}
