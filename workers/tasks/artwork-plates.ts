import { BadInput } from '../../src/graph/complaint.ts';
import type { End, Job } from '../../src/graph/job.ts';
import { feeding, firstOf, upstreamKind } from './job-ends.ts';

/** What lays fills and lines; what comes after them is marks, grain and screens. */
const LAYS: ReadonlySet<string> = new Set(['key-line', 'trap', 'fill-plates']);

/** Where fills and lines stand on the plates before marks, grain and screens, with what they were made from. */
export interface ArtworkEnds {
  plates: End;
  regions: End;
  /** The line that prints; null where none does. */
  line: End | null;
}

/**
 * @throws BadInput when the Press file gets no plates that come from fills
 */
export function artworkEnds(job: Job): ArtworkEnds {
  const press = firstOf(job, 'press-file');
  let plates = feeding(job, press, 'plates');
  const kindOf = (end: End) => job.graph.nodes.find(({ id }) => id === end.node)!.kind;
  while (plates && !LAYS.has(kindOf(plates))) plates = feeding(job, plates.node, 'plates');
  const fill = press && upstreamKind(job, press, 'fill-plates');
  const regions = feeding(job, fill, 'regions');
  if (!press || !plates || !regions)
    throw new BadInput(
      'register slack needs plates of fills: wire Fill plates, and what follows it, to the Press file',
    );
  return { plates, regions, line: feeding(job, upstreamKind(job, press, 'key-line'), 'drawing') };
}
