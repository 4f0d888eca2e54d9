import { execFile } from 'node:child_process';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

const REPO = fileURLToPath(new URL('../..', import.meta.url));

/** Files that the command line makes of a job in the repository, as base64 by name. */
async function renderInNode(_: unknown, job: string, ...options: string[]): Promise<Record<string, string>> {
  const out = await mkdtemp(join(tmpdir(), 'keyblock-browser-'));
  try {
    const args = ['--import', 'tsx', 'src/cli/main.ts', 'render', job, '--out', out, ...options];
    await promisify(execFile)(process.execPath, args, { cwd: REPO });
    const names = await readdir(out);
    const files = names.map(
      async (name) => [name, (await readFile(join(out, name))).toString('base64')] as const,
    );
    return Object.fromEntries(await Promise.all(files));
  } finally {
    await rm(out, { recursive: true });
  }
}

/** What a browser test may ask of the Node side. */
export const keyblockCommands = { renderInNode };

declare module 'vitest/browser' {
  interface BrowserCommands {
    renderInNode: (job: string, ...options: string[]) => Promise<Record<string, string>>;
  }
}
