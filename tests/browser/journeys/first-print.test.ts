import { strFromU8, unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { afterEach, describe, expect, it } from 'vitest';
import { parseJob } from '../../../src/graph/parse-job.ts';
import { reportSchema } from '../../../src/graph/report.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import { cellMiddles, SIZELESS_TRAY } from './seed-tray.ts';
import { accessFaults, dropFile, dropTray, onSheet } from './steps.ts';
import { bytesOf, DESKTOP, type Device, settled, TABLET, Visitor } from './visitor.ts';

const DEVICES: [string, Device][] = [
  ['at a desk, 1440 x 900', DESKTOP],
  ['on a tablet, 1180 x 820 with touch', TABLET],
];

/** Touches or clicks a place of the sheet. */
async function tap(page: Page, device: Device, across: number, down: number): Promise<void> {
  const { x, y } = await onSheet(page, across, down);
  if (device.hasTouch) await page.touchscreen.tap(x, y);
  else await page.mouse.click(x, y);
}

/** Saves as a download: a file dialog of the system cannot be answered here. */
async function withoutSystemDialogs(page: Page): Promise<void> {
  await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
}

describe.each(DEVICES)('%s', (_, device) => {
  let visitor: Visitor;

  afterEach(async () => {
    expect(visitor.errors).toEqual([]);
    await visitor.leave();
  });

  it('opens with the demo on screen, free of access faults', async () => {
    visitor = new Visitor(device);
    const page = await visitor.open();
    await settled(page);
    await page.getByText('Globe artichoke, packet front').first().waitFor();
    expect(await page.getByRole('region', { name: 'Plates' }).getByRole('listitem').count()).toBe(3);
    expect(await accessFaults(page), 'the window').toEqual([]);
    await page.getByRole('button', { name: 'Unfold the wiring over the print' }).click();
    await page
      .getByRole('button', { name: /^Plate grain/ })
      .first()
      .click();
    expect(await accessFaults(page), 'the wiring').toEqual([]);
    await page.getByRole('button', { name: 'Fold the wiring away' }).first().click();
    await page.getByRole('button', { name: 'Deliver' }).click();
    expect(await accessFaults(page), 'delivery').toEqual([]);
  });

  it('leads from a dropped drawing to delivered plates, over a crash', async () => {
    visitor = new Visitor(device);
    let page = await visitor.open();
    await settled(page);
    await dropTray(page);

    await page.getByLabel('Tint of Pantile, %').fill('70');
    await page.keyboard.press('Enter');
    for (const { across, down } of cellMiddles().slice(0, 10)) await tap(page, device, across, down);
    await settled(page);

    await page
      .getByRole('button', { name: /^Plate grain/ })
      .first()
      .click();
    await page.getByLabel('Strength, %', { exact: true }).fill('0');
    await page.keyboard.press('Enter');
    await settled(page);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Redo' }).click();
    await settled(page);

    await page.waitForTimeout(2000);
    await visitor.crash();
    page = await visitor.open();
    await settled(page);
    await withoutSystemDialogs(page);

    const saved = page.waitForEvent('download');
    await page.keyboard.press('Control+s');
    const archive = unzipSync(await bytesOf(await saved));
    const job = parseJob(strFromU8(archive['job.json']!), nodeKinds);
    expect(Object.values(job.colourways[0]!.recipes)).toHaveLength(10);
    expect(job.graph.nodes.find(({ kind }) => kind === 'plate-grain')!.settings).toMatchObject({
      strengthPercent: 0,
    });

    await page.getByRole('button', { name: 'Deliver' }).click();
    const delivered = page.waitForEvent('download', { timeout: 120_000 });
    await page.getByRole('button', { name: 'Make the plates' }).click();
    const files = unzipSync(await bytesOf(await delivered));
    const report = reportSchema.parse(JSON.parse(strFromU8(files['report.json']!)));
    expect(report.drawing.mm).toEqual([101.6, 81.28]);
    expect(report.regions).toHaveLength(13);
    const plate = PNG.sync.read(Buffer.from(files[report.plates[0]!.file!]!));
    const greys = cellMiddles().map(({ across, down }) => {
      const x = Math.floor(across * plate.width);
      const y = Math.floor(down * plate.height);
      return plate.data[(y * plate.width + x) * 4];
    });
    expect(greys).toEqual([...Array(10).fill(255 - 179), 255, 255]);
  });

  it('asks how wide a drawing prints that does not say', async () => {
    visitor = new Visitor(device);
    const page = await visitor.open();
    await settled(page);
    await dropFile(page, 'sizeless.svg', 'image/svg+xml', SIZELESS_TRAY);
    await page.getByRole('button', { name: /A new job/ }).click();
    await page.getByLabel('Printed width').fill('50.8');
    await page.getByRole('button', { name: 'Print it this wide' }).click();
    await page.getByRole('banner').getByText('sizeless', { exact: true }).waitFor();
    await settled(page);
    await page.getByRole('button', { name: 'Deliver' }).click();
    const delivered = page.waitForEvent('download', { timeout: 120_000 });
    await page.getByRole('button', { name: 'Make the plates' }).click();
    const files = unzipSync(await bytesOf(await delivered));
    const report = reportSchema.parse(JSON.parse(strFromU8(files['report.json']!)));
    expect(report.drawing.mm).toEqual([50.8, 40.64]);
  });

  it('loses nothing by a bad file', async () => {
    visitor = new Visitor(device);
    const page = await visitor.open();
    await settled(page);
    await dropFile(page, 'notes.png', 'image/png', 'no picture at all');
    await page
      .getByText(/notes\.png/)
      .first()
      .waitFor();
    await page.getByText('Globe artichoke, packet front').first().waitFor();
    expect(await page.getByRole('region', { name: 'Plates' }).getByRole('listitem').count()).toBe(3);
  });
});
