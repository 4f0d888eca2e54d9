import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Report } from '../../src/graph/report.ts';

const REPO = fileURLToPath(new URL('../..', import.meta.url));

export interface ColdRun {
  seconds: number;
  peakMegabytes: number;
  timings: Report['timings'];
}

/** The demo rendered by the command line as a user starts it, nothing in any cache. */
export function coldRun(): ColdRun {
  const out = mkdtempSync(join(tmpdir(), 'keyblock-bench-'));
  const started = performance.now();
  const args = ['run', '-s', 'keyblock', '--', 'render', 'graphs-demo/artichoke-packet.json', '--out', out];
  const { status } = spawnSync('npm', args, { cwd: REPO, stdio: ['ignore', 'ignore', 'inherit'] });
  const seconds = (performance.now() - started) / 1000;
  if (status !== 0) throw new Error(`the demo did not render: exit ${status}`);
  const report: Report = JSON.parse(readFileSync(join(out, 'report.json'), 'utf8'));
  rmSync(out, { recursive: true });
  return { seconds, peakMegabytes: report.peakBytes / 1e6, timings: report.timings };
}
