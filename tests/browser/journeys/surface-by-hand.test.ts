import { strFromU8, unzipSync } from 'fflate';
import type { CDPSession, Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { afterEach, describe, expect, it } from 'vitest';
import type { Job } from '../../../src/graph/job.ts';
import { upstreamOf } from '../../../src/graph/order.ts';
import { parseJob } from '../../../src/graph/parse-job.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import { areaAtHand, areaSettings, keptBy } from '../../../src/store/areas.ts';
import { recipeOf } from '../../../src/store/edits.ts';
import { fadesOf } from '../../../src/store/fades.ts';
import { marksAtHand, marksOf } from '../../../src/store/hand-marks.ts';
import { offsetOf, registerNode } from '../../../src/store/nudge.ts';
import { accessFaults, onSheet } from './steps.ts';
import { bytesOf, DESKTOP, type Device, settled, TABLET, Visitor } from './visitor.ts';

type Share = [across: number, down: number];

/** The demo's sheet, mm. */
const SHEET = [169.3, 211.7] as const;
/** In the demo's sun, between rim and artichoke. */
const STROKE: Share[] = [
  [0.32, 0.25],
  [0.36, 0.25],
  [0.4, 0.25],
];

/** Drags over places: with the mouse at a desk, with a pen that presses 0.8 on a tablet. */
async function drag(page: Page, device: Device, ...places: Share[]): Promise<void> {
  const points = [];
  for (const [across, down] of places) points.push(await onSheet(page, across, down));
  if (!device.hasTouch) {
    await page.mouse.move(points[0]!.x, points[0]!.y);
    await page.mouse.down();
    for (const { x, y } of points.slice(1)) await page.mouse.move(x, y, { steps: 6 });
    await page.mouse.up();
    return;
  }
  const session = await page.context().newCDPSession(page);
  await pen(session, 'mousePressed', points[0]!, 0.8);
  for (const point of points.slice(1)) await pen(session, 'mouseMoved', point, 0.8);
  await pen(session, 'mouseReleased', points.at(-1)!, 0);
  await session.detach();
}

function pen(
  session: CDPSession,
  type: 'mousePressed' | 'mouseMoved' | 'mouseReleased',
  { x, y }: { x: number; y: number },
  force: number,
) {
  const held = { button: 'left', buttons: type === 'mouseReleased' ? 0 : 1, clickCount: 1 } as const;
  return session.send('Input.dispatchMouseEvent', { type, x, y, force, pointerType: 'pen', ...held });
}

async function press(page: Page, device: Device, [across, down]: Share): Promise<void> {
  const { x, y } = await onSheet(page, across, down);
  if (device.hasTouch) await page.touchscreen.tap(x, y);
  else await page.mouse.click(x, y);
}

/** Waits for the fine picture of what was just changed. */
async function shown(page: Page): Promise<void> {
  await page.waitForTimeout(250);
  await settled(page);
}

/** The mean colour on the screen about a place of the sheet. */
async function colourAt(page: Page, [across, down]: Share): Promise<number[]> {
  const { x, y } = await onSheet(page, across, down);
  const png = PNG.sync.read(await page.screenshot({ clip: { x: x - 2, y: y - 2, width: 5, height: 5 } }));
  return [0, 1, 2].map((band) => {
    let sum = 0;
    for (let i = band; i < png.data.length; i += 4) sum += png.data[i]!;
    return sum / (png.data.length / 4);
  });
}

async function saved(page: Page): Promise<Job> {
  const download = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  return parseJob(strFromU8(unzipSync(await bytesOf(await download))['job.json']!), nodeKinds);
}

const undoName = (page: Page) =>
  page.getByRole('button', { name: 'Undo', exact: true }).getAttribute('title');
const undo = (page: Page) => page.getByRole('button', { name: 'Undo', exact: true }).click();

/** Opens the settings of the tool in hand where they are folded away. */
async function unfold(page: Page): Promise<void> {
  const fold = page.getByRole('button', { name: /^Settings of/ });
  if ((await fold.isVisible()) && (await fold.getAttribute('aria-expanded')) === 'false') await fold.click();
}

describe.each<[string, Device]>([
  ['at a desk', DESKTOP],
  ['on a tablet with a pen', TABLET],
])('the surface worked by hand, %s', (_, device) => {
  let visitor: Visitor;

  async function begin(): Promise<Page> {
    visitor = new Visitor(device);
    const page = await visitor.open();
    await settled(page);
    await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
    return page;
  }

  afterEach(async () => {
    expect(visitor.errors).toEqual([]);
    await visitor.leave();
  });

  it('takes strokes, which print, are chosen, changed, moved, erased and undone', async () => {
    const page = await begin();
    const orange = await colourAt(page, STROKE[1]!);
    await page.getByRole('button', { name: 'Surface', exact: true }).click();
    await unfold(page);
    await page.getByLabel('Width, mm').fill('6');
    await page.keyboard.press('Enter');
    await drag(page, device, ...STROKE);
    await shown(page);
    expect(await accessFaults(page), 'hand marks').toEqual([]);
    await page.keyboard.press('t');
    await page.mouse.move(5, 300);
    const bare = await colourAt(page, STROKE[1]!);
    expect(bare[2]! - orange[2]!).toBeGreaterThan(100);
    expect(Math.min(...bare)).toBeGreaterThan(215);

    const job = await saved(page);
    const node = marksAtHand(job, null)!;
    expect(upstreamOf(job.graph, node.id)).toContain('key-line');
    expect(upstreamOf(job.graph, 'plate-grain')).toContain(node.id);
    const [mark] = marksOf(node);
    expect(mark).toMatchObject({ does: 'lift', tintPercent: 100, widthMm: 6, plates: [] });
    const [first, last] = [mark!.points[0]!, mark!.points.at(-1)!];
    expect(first[0]).toBeCloseTo(0.32 * SHEET[0], 0);
    expect(last[0]).toBeCloseTo(0.4 * SHEET[0], 0);
    expect(last[1]).toBeCloseTo(0.25 * SHEET[1], 0);
    expect(last[2]).toBeCloseTo(device.hasTouch ? 0.8 : 0.5, 1);
    expect(mark!.points.length).toBeLessThan(6);

    await page.getByRole('application', { name: 'The print' }).focus();
    await page.keyboard.press('b');
    await page.keyboard.press('v');
    await press(page, device, [0.36, 0.25]);
    await page.getByText('Chosen:', { exact: true }).waitFor({ state: 'attached' });
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('ArrowDown');
    expect(marksOf(marksAtHand(await saved(page), null)!)[0]!.points[0]![1]).toBeCloseTo(first[1] + 1.1, 6);
    await page.keyboard.press('Delete');
    expect(await undoName(page)).toBe('Take a stroke out');
    await undo(page);
    await undo(page);
    expect(await undoName(page)).toBe('Draw a stroke');
    await page.keyboard.press('e');
    await drag(page, device, [0.36, 0.2], [0.36, 0.3]);
    expect(await undoName(page)).toBe('Erase a stroke');
    expect(marksOf(marksAtHand(await saved(page), null)!)).toEqual([]);
    await undo(page);
    await undo(page);
    expect(await undoName(page)).toBe('Put Hand marks in before Plate grain');
  });

  it('takes areas, which a step keeps to, by pointer and by keyboard', async () => {
    const page = await begin();
    await page.keyboard.press('l');
    await drag(page, device, [0.1, 0.1], [0.3, 0.1], [0.3, 0.3]);
    expect(await undoName(page)).toBeNull();
    await unfold(page);
    await page.getByRole('button', { name: 'Make area' }).click();
    await page.getByText(/^Area made: wired from the drawing and its regions into Plate grain/).waitFor();
    await drag(page, device, [0.1, 0.1], [0.3, 0.1], [0.3, 0.3], [0.1, 0.3], [0.1, 0.12]);
    expect(await undoName(page)).toBe('Lasso a part of the area');
    await page.keyboard.press('r');
    await drag(page, device, [0.5, 0.5], [0.7, 0.8]);
    expect(await undoName(page)).toBe('Draw a rectangle of the area');
    await page.keyboard.press('q');
    await drag(page, device, [0.2, 0.4], [0.4, 0.4]);
    await page.keyboard.press('a');
    await press(page, device, STROKE[1]!);
    await page.getByRole('application', { name: 'The print' }).focus();
    await page.keyboard.press('g');
    for (const way of ['ArrowRight', 'ArrowDown', 'ArrowLeft']) {
      for (let presses = 0; presses < 4; presses++) await page.keyboard.press(way);
      await page.keyboard.press('Enter');
    }
    await page.keyboard.press('Enter');
    expect(await undoName(page)).toBe('Draw a polygon of the area');
    await shown(page);
    expect(await accessFaults(page), 'areas').toEqual([]);

    const job = await saved(page);
    const area = areaAtHand(job, null)!;
    const settings = areaSettings(area);
    expect(keptBy(job, area.id).map(({ id }) => id)).toEqual(['plate-grain']);
    expect(settings.shapes).toHaveLength(3);
    const [left, top] = settings.shapes[1]!.pathMm[0]!;
    expect([left / SHEET[0], top / SHEET[1]]).toEqual([expect.closeTo(0.5, 2), expect.closeTo(0.5, 2)]);
    expect(settings.lines).toMatchObject([{ withinMm: 3 }]);
    expect(settings.regions).toHaveLength(1);

    await page.keyboard.press('v');
    await press(page, device, [0.6, 0.5]);
    await page.keyboard.press('Delete');
    expect(areaSettings(areaAtHand(await saved(page), null)!).shapes).toHaveLength(2);
    expect(await undoName(page)).toBe('Take a shape out of the area');
  });

  it('takes fades with handles, and plates nudged against one another', async () => {
    const page = await begin();
    await page.keyboard.press('1');
    await page.keyboard.press('f');
    const [start, end]: [Share, Share] = [
      [0.3, 0.24],
      [0.6, 0.1],
    ];
    const before = await colourAt(page, [0.58, 0.09]);
    await drag(page, device, start, [0.45, 0.17], end);
    await shown(page);
    expect(await undoName(page)).toBe('Fade a region');
    expect(await accessFaults(page), 'a fade').toEqual([]);
    const after = await colourAt(page, [0.58, 0.09]);
    expect(after[0]! + after[1]!).toBeLessThan(before[0]! + before[1]! - 60);
    const job = await saved(page);
    const [[region, fade]] = Object.entries(fadesOf(job)) as [[string, ReturnType<typeof fadesOf>[string]]];
    expect(fade).toMatchObject({ shape: 'linear', from: recipeOf(job, region) });
    expect(fade.to).not.toEqual(fade.from);
    await drag(page, device, end, [0.65, 0.12]);
    const moved = fadesOf(await saved(page))[region]!;
    expect(moved.pathMm[0]).toEqual(fade.pathMm[0]);
    expect(moved.pathMm[1]![0]).toBeGreaterThan(fade.pathMm[1]![0] + 5);
    await page.keyboard.press('Delete');
    expect(fadesOf(await saved(page))).toEqual({});

    await page.keyboard.press('n');
    await unfold(page);
    await page.getByRole('combobox', { name: 'Plate', exact: true }).selectOption('Water butt');
    await page.getByRole('button', { name: 'Set back', exact: true }).click();
    await page.getByRole('application', { name: 'The print' }).focus();
    for (const key of ['ArrowRight', 'ArrowRight', 'ArrowRight', 'Shift+ArrowDown'])
      await page.keyboard.press(key);
    await page.getByText('1.00 mm along the feed, 0.30 mm across').first().waitFor();
    expect(await undoName(page)).toBe('Nudge Water butt');
    await shown(page);
    expect(await accessFaults(page), 'a nudged plate').toEqual([]);
    const nudged = await saved(page);
    const plate = nodeKinds
      .get('ink-set')!
      .settings.parse(nudged.graph.nodes.find(({ kind }) => kind === 'ink-set')!.settings) as {
      plates: { id: string }[];
    };
    expect(offsetOf(registerNode(nudged)!, plate.plates[1]!.id)).toMatchObject({ alongMm: 1, acrossMm: 0.3 });
  });
});
