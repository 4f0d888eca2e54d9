import type { Job } from '../graph/job.ts';
import { keyLine } from '../nodes/key-line.ts';
import type { Tolerance } from './slack.ts';
import { changedNodes, withTrap } from './with-trap.ts';

/**
 * The job with a trap everywhere and fills reaching under the line, as far as they are asked for; what reaches as far
 * already stays. A line counts as covering a border where it does so by the whole tolerance.
 */
export function mendedForAll(
  job: Job,
  { trapMm, insetMm }: { trapMm: number | null; insetMm: number | null },
  { alongMm, acrossMm }: Tolerance,
): Job {
  const toleranceMm = Math.max(alongMm, acrossMm);
  const trapped =
    trapMm === null
      ? job
      : changedNodes(withTrap(job), 'trap', (settings) => ({ ...settings, widthMm: trapMm, toleranceMm }));
  return insetMm === null ? trapped : withInset(trapped, insetMm);
}

/** The job with fills reaching at least so far under the line. */
export function withInset(job: Job, insetMm: number): Job {
  return changedNodes(job, keyLine.kind, (settings) => {
    const now = keyLine.settings.shape.insetMm.parse(settings.insetMm);
    return { ...settings, insetMm: Math.max(now, insetMm) };
  });
}

/** The job with its line heavier by so much more. */
export function withHeavierLine(job: Job, moreMm: number): Job {
  return changedNodes(job, 'clean-line', (settings) => {
    const now = typeof settings.heavierMm === 'number' ? settings.heavierMm : 0;
    return { ...settings, heavierMm: Math.min(0.5, Math.round((now + moreMm) * 1000) / 1000) };
  });
}
