import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium, type Page } from 'playwright-core';
import { CHROMIUM_FLAGS, findChromium } from './chromium.ts';
import { serveApp } from './serve-app.ts';

const FOLDER = new URL('../graphs-demo/pictures/', import.meta.url);

async function rest(page: Page): Promise<void> {
  await page.getByText(/^\d+\.\d s · \d+ MB$/).waitFor({ timeout: 90_000 });
  await page.waitForTimeout(1500);
}

/** Takes the README's pictures of the window, from the built app with the demo job. */
async function main(): Promise<void> {
  mkdirSync(FOLDER, { recursive: true });
  const app = await serveApp();
  const browser = await chromium.launch({ executablePath: findChromium()!, args: CHROMIUM_FLAGS });
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  const take = (name: string) =>
    page.screenshot({ path: fileURLToPath(new URL(name, FOLDER)), type: 'jpeg', quality: 82 });
  await page.goto(app.url);
  await rest(page);
  await page
    .getByRole('button', { name: /^Key line/ })
    .first()
    .click();
  await page.keyboard.press('3');
  await take('window.jpg');
  await page.getByRole('button', { name: 'Unfold the wiring over the print' }).click();
  await page.waitForTimeout(1000);
  await take('wiring.jpg');
  await page.getByRole('button', { name: 'Fold the wiring away' }).first().click();
  await page.getByRole('button', { name: 'regions', exact: true }).click();
  await rest(page);
  await take('regions.jpg');
  await browser.close();
  await app.stop();
}

await main();
