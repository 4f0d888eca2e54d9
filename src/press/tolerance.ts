import type { Job } from '../graph/job.ts';
import { registerOffset } from '../nodes/register-offset.ts';
import type { Tolerance } from './slack.ts';

/** How far plates may drift: as the job's press says, else as its Register offset does. */
export function toleranceOf(job: Job): Tolerance {
  const node = job.graph.nodes.find(({ kind }) => kind === registerOffset.kind);
  const offset = registerOffset.settings.safeParse(node?.settings ?? {});
  const { feedEdge, toleranceAlongMm, toleranceAcrossMm } = offset.data ?? registerOffset.settings.parse({});
  const figures = job.press?.figures;
  return {
    alongMm: figures?.toleranceAlongMm?.value ?? toleranceAlongMm,
    acrossMm: figures?.toleranceAcrossMm?.value ?? toleranceAcrossMm,
    feed: feedEdge === 'top' || feedEdge === 'bottom' ? 'down' : 'across',
  };
}
