import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { findChromium } from './chromium.ts';

/** What reads back the files that the tests write, by the Debian package that brings it. */
const READERS: Readonly<Record<string, string>> = {
  gs: 'ghostscript',
  qpdf: 'qpdf',
  pdfinfo: 'poppler-utils',
  pdfimages: 'poppler-utils',
  tiffinfo: 'libtiff-tools',
  pngcheck: 'pngcheck',
};

/** Before the tests: say which Chromium they use, installing from Debian what is missing where that is possible. */
function main(): void {
  const packages = new Set(
    Object.entries(READERS)
      .filter(([program]) => !isOnPath(program))
      .map(([, name]) => name),
  );
  if (!findChromium()) packages.add('chromium');
  if (packages.size > 0) install([...packages]);
  console.log(`browser tests use ${findChromium()}`);
}

function install(packages: readonly string[]): void {
  const listed = packages.join(' ');
  const canInstall = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  if (!canInstall) {
    console.error(
      `The tests need programs that are not here. Install them (Debian: apt-get install ${listed}); a Chromium elsewhere is found through CHROMIUM_PATH.`,
    );
    process.exit(1);
  }
  console.log(`installing Debian packages: ${listed}`);
  const apt = (...args: string[]) =>
    execFileSync('apt-get', args, { stdio: ['ignore', 'inherit', 'inherit'] });
  apt('update', '-q');
  apt('install', '-y', '-q', '--no-install-recommends', ...packages);
}

function isOnPath(program: string): boolean {
  const folders = (process.env.PATH ?? '').split(':');
  return folders.some((folder) => existsSync(`${folder}/${program}`));
}

main();
