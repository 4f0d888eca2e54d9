import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { SEED_TRAY } from './seed-tray.ts';
import { settled } from './visitor.ts';

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

interface AxeResult {
  violations: { id: string; nodes: { html: string; failureSummary: string }[] }[];
}

/** Faults that axe-core finds on the screen as it stands, one line each, by the rules of WCAG 2.2 AA. */
export async function accessFaults(page: Page): Promise<string[]> {
  await page.addScriptTag({ path: AXE });
  const { violations } = await page.evaluate<AxeResult>(
    `axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] })`,
  );
  return violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`,
  );
}

/** Drops a file on the window, as from a folder. */
export async function dropFile(page: Page, name: string, type: string, text: string): Promise<void> {
  const data = await page.evaluateHandle(
    ([fileName, fileType, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content!], fileName!, { type: fileType! }));
      return transfer;
    },
    [name, type, text],
  );
  for (const event of ['dragenter', 'dragover', 'drop'])
    await page.dispatchEvent('body', event, { dataTransfer: data });
}

/** Drops the seed tray and makes a job of it. */
export async function dropTray(page: Page): Promise<void> {
  await dropFile(page, 'seed-tray.svg', 'image/svg+xml', SEED_TRAY);
  await page.getByRole('button', { name: /A new job/ }).click();
  await page
    .getByRole('banner')
    .getByText(/^seed.tray$/)
    .waitFor();
  await settled(page);
}

/** Where a place of the sheet, in shares of its width and height, lies on the screen. */
export async function onSheet(page: Page, across: number, down: number): Promise<{ x: number; y: number }> {
  const sheet = page.getByRole('application', { name: 'The print' }).locator('> div').first();
  const box = (await sheet.boundingBox())!;
  return { x: box.x + box.width * across, y: box.y + box.height * down };
}
