import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { findChromium } from './chromium.ts';

/** Before the tests: say which Chromium they use, installing Debian's where that is possible. */
function main(): void {
  const found = findChromium();
  if (found) {
    console.log(`browser tests use ${found}`);
    return;
  }
  const canInstall = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  if (!canInstall) {
    console.error(
      'No Chromium or Chrome found for the browser tests. Install one (Debian: apt-get install chromium) or set CHROMIUM_PATH to its program file.',
    );
    process.exit(1);
  }
  console.log('no Chromium found: installing the Debian package');
  const apt = (...args: string[]) =>
    execFileSync('apt-get', args, { stdio: ['ignore', 'inherit', 'inherit'] });
  apt('update', '-q');
  apt('install', '-y', '-q', '--no-install-recommends', 'chromium');
}

main();
