import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const REPO = fileURLToPath(new URL('../../..', import.meta.url));
const HOOK = fileURLToPath(new URL('./tell-peak.mjs', import.meta.url));

export interface Outcome {
  code: number | null;
  stdout: string;
  stderr: string;
  /** The most memory the process held, bytes. */
  peakBytes: number;
}

/** A folder of its own for one test file. */
export class Scratch {
  readonly path = mkdtempSync(join(tmpdir(), 'keyblock-'));

  /** Writes a file and returns its path. */
  file(name: string, content: string | Uint8Array): string {
    const path = join(this.path, name);
    writeFileSync(path, content);
    return path;
  }

  /** Names in a folder inside; none where it was never made. */
  list(folder: string): string[] {
    try {
      return readdirSync(join(this.path, folder)).sort();
    } catch {
      return [];
    }
  }

  remove(): void {
    rmSync(this.path, { recursive: true, force: true });
  }
}

/** Runs the command line as a user does, without a terminal. */
export async function keyblock(...args: string[]): Promise<Outcome> {
  const peakFile = join(mkdtempSync(join(tmpdir(), 'keyblock-peak-')), 'peak');
  const node = ['--import', 'tsx', '--import', HOOK, 'src/cli/main.ts', ...args];
  const child = spawn(process.execPath, node, { cwd: REPO, env: { ...process.env, PEAK_FILE: peakFile } });
  let stdout = '';
  let stderr = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    stdout += text;
  });
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    stderr += text;
  });
  const code = await new Promise<number | null>((resolve) => child.once('close', resolve));
  const peakBytes = Number(readFileSync(peakFile, 'utf8'));
  rmSync(join(peakFile, '..'), { recursive: true });
  return { code, stdout, stderr, peakBytes };
}
