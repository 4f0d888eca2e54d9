import type { Job } from '../graph/job.ts';
import { pressSheet } from '../nodes/press-sheet.ts';
import { registerOffset } from '../nodes/register-offset.ts';
import { figureOf } from './profiles.ts';
import type { Tolerance } from './slack.ts';

/**
 * How far plates may drift: as the job's press says, else as its Register offset does. The sheet is fed by the edge
 * that Press sheet names, else Register offset.
 */
export function toleranceOf({ graph, press }: Pick<Job, 'graph' | 'press'>): Tolerance {
  const settingsOf = (kind: string) => graph.nodes.find((node) => node.kind === kind)?.settings;
  const read = registerOffset.settings.safeParse(settingsOf(registerOffset.kind) ?? {});
  const offset = read.data ?? registerOffset.settings.parse({});
  const sheet = pressSheet.settings.safeParse(settingsOf(pressSheet.kind));
  const feedEdge = sheet.data?.feedEdge ?? offset.feedEdge;
  return {
    alongMm: figureOf(press, 'toleranceAlongMm') ?? offset.toleranceAlongMm,
    acrossMm: figureOf(press, 'toleranceAcrossMm') ?? offset.toleranceAcrossMm,
    feed: feedEdge === 'top' || feedEdge === 'bottom' ? 'down' : 'across',
  };
}
