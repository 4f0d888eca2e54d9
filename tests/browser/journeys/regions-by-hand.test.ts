import { strFromU8, unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { parseJob } from '../../../src/graph/parse-job.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import { recipeOf } from '../../../src/store/edits.ts';
import { handEdits } from '../../../src/store/region-edits.ts';
import { accessFaults, dropFile, onSheet } from './steps.ts';
import { bytesOf, DESKTOP, type Device, settled, TABLET, Visitor } from './visitor.ts';

/** Two rooms on 60 x 40 mm with a door of 0.4 mm between them. */
const TWO_ROOMS = `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">
  <path d="M5 5h50v30h-50ZM30 5v14.8M30 20.2v14.8" fill="none" stroke="#000" stroke-width="0.5"/>
</svg>`;

type Share = [across: number, down: number];

/** In the demo's sun: across the disc from its rim to the artichoke, at two places; and either side of both. */
const WALL: [Share, Share] = [
  [0.53, 0.02],
  [0.53, 0.3],
];
const CUT: [Share, Share] = [
  [0.44, 0.07],
  [0.44, 0.12],
];
const LEFT: Share = [0.28, 0.25];
const RIGHT: Share = [0.68, 0.25];

const found = (page: Page, count: number) =>
  page.getByRole('button', { name: `Regions ${count}`, exact: true }).waitFor({ timeout: 30_000 });

/** How many regions there are, once it is another number than before. */
async function foundOtherThan(page: Page, before: number): Promise<number> {
  const head = page.getByRole('button', { name: /^Regions [\d,]+$/ });
  const count = async () => Number((await head.textContent())!.replace(/\D/g, ''));
  await vi.waitFor(async () => expect(await count()).not.toBe(before), { timeout: 30_000, interval: 100 });
  return count();
}

/** Presses places one after the other, with a finger or the mouse. */
async function press(page: Page, device: Device, ...places: Share[]): Promise<void> {
  for (const [across, down] of places) {
    const { x, y } = await onSheet(page, across, down);
    if (device.hasTouch) await page.touchscreen.tap(x, y);
    else await page.mouse.click(x, y);
  }
}

/** A straight path: dragged with the mouse, corner by corner with a finger. */
async function path(page: Page, device: Device, [from, to]: [Share, Share]): Promise<void> {
  if (device.hasTouch) {
    await press(page, device, from, to);
    await page.getByRole('button', { name: 'Finish' }).click();
    return;
  }
  const [start, end] = [await onSheet(page, ...from), await onSheet(page, ...to)];
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  await page.mouse.move(end.x, end.y, { steps: 12 });
  await page.mouse.up();
}

describe.each<[string, Device]>([
  ['at a desk', DESKTOP],
  ['on a tablet with touch', TABLET],
])('regions that hold, %s', (_, device) => {
  let visitor: Visitor;

  afterEach(async () => {
    expect(visitor.errors).toEqual([]);
    await visitor.leave();
  });

  it('are mended by hand, grouped, tinted together and saved', async () => {
    visitor = new Visitor(device);
    const page = await visitor.open();
    await settled(page);
    await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
    await page.getByRole('button', { name: 'regions', exact: true }).click();
    await settled(page);
    const tool = (name: string) => page.getByRole('button', { name, exact: true }).click();
    const before = await foundOtherThan(page, 0);
    expect(before).toBeGreaterThan(100);
    expect(await accessFaults(page), 'the regions').toEqual([]);

    await tool('Draw wall');
    await path(page, device, WALL);
    const walled = await foundOtherThan(page, before);
    expect(walled).toBeGreaterThan(before);
    await tool('Cut');
    await path(page, device, CUT);
    await found(page, walled + 1);
    await tool('Join');
    await press(page, device, LEFT, RIGHT);
    await found(page, walled);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await found(page, walled + 1);
    await settled(page);

    await tool('Choose');
    await press(page, device, LEFT, RIGHT);
    await page.getByText('2 regions', { exact: true }).waitFor();
    await tool('Make a group');
    await page.keyboard.type('Sun');
    await page.keyboard.press('Enter');
    await tool('Clear');
    await page.keyboard.press('3');
    await page.getByRole('button', { name: 'Sun 2 regions' }).click();
    expect(await accessFaults(page), 'a group').toEqual([]);
    await page.getByTitle('Give all of Sun the recipe in hand').click();
    await settled(page);

    const saved = page.waitForEvent('download');
    await page.keyboard.press('Control+s');
    const job = parseJob(strFromU8(unzipSync(await bytesOf(await saved))['job.json']!), nodeKinds);
    expect(handEdits(job).map(({ does }) => does)).toEqual(['draw-wall', 'cut']);
    const [sun] = job.groups;
    expect(sun).toMatchObject({ name: 'Sun' });
    const [left, right] = sun!.regions.map((id) => recipeOf(job, id));
    expect(left).toEqual(right);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    expect(await page.getByRole('button', { name: 'Undo', exact: true }).getAttribute('title')).toBe(
      'Make group Sun',
    );
  });

  it('tell of a wall that closes an opening, and open it by keyboard', async () => {
    visitor = new Visitor(device);
    const page = await visitor.open();
    await settled(page);
    await dropFile(page, 'two-rooms.svg', 'image/svg+xml', TWO_ROOMS);
    await page.getByRole('button', { name: /A new job/ }).click();
    await page
      .getByRole('banner')
      .getByText(/^two.rooms$/)
      .waitFor();
    await settled(page);
    await page.getByRole('button', { name: 'regions', exact: true }).click();
    await found(page, 3);
    await page.keyboard.press('o');
    await page.getByRole('application', { name: 'The print' }).focus();
    await page.keyboard.press('Alt+ArrowDown');
    await page
      .getByText(/^0\.\d\d mm opening, closed\. Click to open it\.$/)
      .first()
      .waitFor();
    await page.keyboard.press('Enter');
    await page.getByText('1 opened by hand').waitFor();
    await found(page, 2);
    await page.keyboard.press('Enter');
    await found(page, 3);
    await page.getByText('Nothing changed by hand.').waitFor();
  });
});
