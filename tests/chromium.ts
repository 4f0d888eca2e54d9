import { existsSync } from 'node:fs';

const PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/** The flags a quiet, root-run, offline Chromium needs. */
export const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Path of an installed Chromium or Chrome, `CHROMIUM_PATH` first; null where there is none. */
export function findChromium(): string | null {
  const named = process.env.CHROMIUM_PATH;
  if (named && existsSync(named)) return named;
  return PLACES.find((place) => existsSync(place)) ?? null;
}
