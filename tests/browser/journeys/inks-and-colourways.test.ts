import { readFileSync } from 'node:fs';
import { strFromU8, unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { shelfSchema } from '../../../src/graph/inks.ts';
import { parseJob } from '../../../src/graph/parse-job.ts';
import { parseStyle } from '../../../src/graph/style.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import { SEED_TRAY } from './seed-tray.ts';
import { accessFaults, dropFile } from './steps.ts';
import { bytesOf, DESKTOP, type Device, settled, TABLET, Visitor } from './visitor.ts';

const ROUGH = readFileSync(
  new URL('../../../graphs-demo/roughs/artichoke-packet.svg', import.meta.url),
  'utf8',
);

const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, exact: typeof name === 'string' });
const press = (page: Page, name: string | RegExp) => button(page, name).first().click();

/** The file that a press gives out. */
async function given(page: Page, name: string | RegExp): Promise<Uint8Array> {
  const download = page.waitForEvent('download');
  await press(page, name);
  return bytesOf(await download);
}

async function savedJob(page: Page) {
  const download = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  return parseJob(strFromU8(unzipSync(await bytesOf(await download))['job.json']!), nodeKinds);
}

describe.each<[string, Device]>([
  ['at a desk', DESKTOP],
  ['on a tablet with touch', TABLET],
])('inks and colourways, %s', (_, device) => {
  let visitor: Visitor;

  afterEach(async () => {
    expect(visitor.errors).toEqual([]);
    await visitor.leave();
  });

  const opened = async () => {
    visitor = new Visitor(device);
    const page = await visitor.open();
    await page.evaluate(() => {
      Reflect.deleteProperty(window, 'showSaveFilePicker');
      Reflect.deleteProperty(window, 'showOpenFilePicker');
    });
    await settled(page);
    return page;
  };

  it('are chosen from the chart, the shelf and a search, and the print follows', async () => {
    const page = await opened();
    await press(page, 'all recipes, in a chart over the print');
    await page
      .getByRole('toolbar', { name: 'Pantile with Damson, at most 70 %' })
      .getByRole('button')
      .nth(4)
      .click();
    await press(page, 'hold the one in hand');
    await page
      .getByRole('toolbar', { name: /^Water butt, from/ })
      .getByRole('button')
      .first()
      .click();
    await page.getByText(/: 1, .*CIEDE2000 apart/).waitFor();
    await press(page, 'hue');
    await page.getByLabel('Seen with').selectOption('deutan');
    expect(await accessFaults(page), 'the chart').toEqual([]);
    await press(page, 'usual eyes');
    await page.keyboard.press('Escape');

    await press(page, /^Ink set/);
    await press(page, 'Open the ink shelf');
    await page.getByRole('textbox', { name: 'Name of Privet' }).waitFor();
    expect(await accessFaults(page), 'the shelf').toEqual([]);
    const shelf = shelfSchema.parse(JSON.parse(strFromU8(await given(page, 'Export as JSON'))));
    expect(shelf.inks.map(({ id }) => id)).toContain('rhubarb');
    await press(page, 'Find a set');
    await press(page, 'Find sets');
    await button(page, /^Print with this set/)
      .nth(1)
      .click({ timeout: 60_000 });
    expect(await accessFaults(page), 'sets of inks').toEqual([]);
    await press(page, 'Fold Inks away');
    await settled(page);
    const job = await savedJob(page);
    const { inks, plates } = job.graph.nodes.find(({ kind }) => kind === 'ink-set')!.settings as {
      inks: { id: string }[];
      plates: { id: string }[];
    };
    expect(inks.map(({ id }) => id).sort()).not.toEqual(['damson', 'pantile', 'water-butt']);
    const held = new Set(plates.map(({ id }) => id));
    for (const { recipes } of job.colourways)
      for (const recipe of Object.values(recipes))
        for (const plate of Object.keys(recipe)) expect(held).toContain(plate);
  });

  it('are proposed, kept, compared, matched to a rough and saved as a style for another drawing', async () => {
    const page = await opened();
    await press(page, 'Propose');
    const sheet = page.getByRole('region', { name: 'Proposed colourways' }).first();
    await sheet.getByRole('button', { name: 'Propose', exact: true }).click();
    await button(page, 'Keep as a colourway: proposal 2').click({ timeout: 60_000 });
    expect(await accessFaults(page), 'proposals').toEqual([]);
    await press(page, 'Fold Proposed colourways away');
    await press(page, 'Compare');
    await page.getByRole('img', { name: 'Proposal 2' }).first().waitFor({ timeout: 60_000 });
    await page.getByRole('slider', { name: 'How much of the left one shows' }).fill('20');
    expect(await accessFaults(page), 'the comparison').toEqual([]);
    await press(page, 'all of them');
    const contact = await given(page, 'Deliver a contact sheet');
    expect([...contact.slice(1, 4)].map((byte) => String.fromCharCode(byte)).join('')).toBe('PNG');
    await press(page, 'Fold Colourways compared away');

    await dropFile(page, 'rough.svg', 'image/svg+xml', ROUGH);
    await press(page, /^A rough for this drawing/);
    await press(page, /^Rough/);
    await page.getByText(/apart on average/).waitFor({ timeout: 60_000 });
    await page
      .getByRole('button', { name: /show what is so far from the rough$/ })
      .first()
      .click();
    expect(await accessFaults(page), 'the rough').toEqual([]);

    await press(page, /^Job/);
    await press(page, 'Save as a house style');
    const style = parseStyle(strFromU8(await given(page, 'Keep and download it')), nodeKinds);
    expect(style.rules.palette.length).toBeGreaterThan(3);
    await press(page, /^Job/);
    const chooser = page.waitForEvent('filechooser');
    await press(page, /^New from a drawing in/);
    await (await chooser).setFiles({
      name: 'tray.svg',
      mimeType: 'image/svg+xml',
      buffer: Buffer.from(SEED_TRAY),
    });
    await button(page, 'Regions 13').waitFor({ timeout: 60_000 });
    await settled(page);
    const job = await savedJob(page);
    const used = new Set(Object.values(job.colourways[0]!.recipes).map((recipe) => JSON.stringify(recipe)));
    expect(used.size).toBeGreaterThan(1);
  });
});
