import { strFromU8, unzipSync } from 'fflate';
import { afterEach, describe, expect, it } from 'vitest';
import { parseJob } from '../../../src/graph/parse-job.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import { SEED_TRAY } from './seed-tray.ts';
import { accessFaults, dropFile } from './steps.ts';
import { bytesOf, DESKTOP, type Device, settled, TABLET, Visitor } from './visitor.ts';

/** The tray with its first cell parted and its last one left out. */
const REDRAWN = SEED_TRAY.replace('</g>', '<path d="M15 7v20"/></g>').replace(
  /<rect(?![\s\S]*<rect)[^>]*>/,
  '',
);

describe.each<[string, Device]>([
  ['at a desk', DESKTOP],
  ['on a tablet with touch', TABLET],
])('changed lines, %s', (_, device) => {
  let visitor: Visitor;

  afterEach(async () => {
    expect(visitor.errors).toEqual([]);
    await visitor.leave();
  });

  it('keep their tints, are told of with the old lines over them, and can be undone', async () => {
    visitor = new Visitor(device);
    const page = await visitor.open();
    await settled(page);
    await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
    const press = (name: string | RegExp) =>
      page
        .getByRole('button', { name, exact: typeof name === 'string' })
        .first()
        .click();
    await dropFile(page, 'tray.svg', 'image/svg+xml', SEED_TRAY);
    await press(/^A new job/);
    await page.getByRole('button', { name: 'Regions 13', exact: true }).waitFor({ timeout: 60_000 });
    await settled(page);
    await press('Propose');
    await page.getByRole('textbox', { name: /^Tint of Pantile/ }).fill('60');
    await page.keyboard.press('Enter');
    await press('Add the recipe in hand');
    await page.getByRole('textbox', { name: /^Tint of Damson/ }).fill('40');
    await page.keyboard.press('Enter');
    await press('Add the recipe in hand');
    await page
      .getByRole('region', { name: 'Proposed colourways' })
      .first()
      .getByRole('button', { name: 'Propose', exact: true })
      .click();
    await page.getByRole('button', { name: 'Keep as a colourway: proposal 1' }).click({ timeout: 60_000 });
    await press('Fold Proposed colourways away');
    await settled(page);

    await dropFile(page, 'redrawn.svg', 'image/svg+xml', REDRAWN);
    await press(/^The drawing of this job/);
    await page.getByRole('button', { name: /^Redraw \d+ to look at$/ }).waitFor({ timeout: 60_000 });
    await settled(page);
    await page.getByLabel('Old lines over the print').check();
    expect(await accessFaults(page), 'the redraw report').toEqual([]);
    const saved = page.waitForEvent('download');
    await page.keyboard.press('Control+s');
    const job = parseJob(strFromU8(unzipSync(await bytesOf(await saved))['job.json']!), nodeKinds);
    const count = (state: string) => job.redraw!.cases.filter((each) => each.state === state).length;
    expect([count('split'), count('gone')]).toEqual([2, 1]);
    const recipes = job.colourways.find(({ id }) => id === job.colourway)!.recipes;
    for (const { new: fresh } of job.redraw!.cases) if (fresh) expect(recipes).toHaveProperty(fresh);

    await press('Undo');
    await page.getByRole('button', { name: /^Redraw/ }).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Regions 13', exact: true }).waitFor({ timeout: 60_000 });
  });
});
