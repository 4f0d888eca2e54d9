import { readFileSync } from 'node:fs';
import { chromium, type Page } from 'playwright-core';
import { parseJob } from '../../src/graph/parse-job.ts';
import { nodeKinds } from '../../src/nodes/registry.ts';
import { recipeKey } from '../../src/store/recipe-list.ts';
import { onSheet } from '../browser/journeys/steps.ts';
import { CHROMIUM_FLAGS, findChromium } from '../chromium.ts';
import { serveApp } from '../serve-app.ts';
import { during, longest, type Seen, watch } from './page-watch.ts';

const DEMO = new URL('../../graphs-demo/artichoke-packet.json', import.meta.url);
const VIEWPORT = { width: 1440, height: 900 };
/** The proof while the hand moves is 1/8 each way. */
const COARSE = 8;
const TINTS = 8;
const PATIENCE_MS = 120_000;

/** How the window answers. */
export interface WindowFigures {
  /** From the decoded drawing to the first coarse proof on screen. */
  firstProofSeconds: number;
  /** From letting go over a region to the coarse proof in its new tint on screen; one for each region. */
  tintMs: number[];
  medianTintMs: number;
  /** The longest task of the page's own thread, ms, by what was done; null when none took 50. */
  longestTaskMs: Record<string, number | null>;
}

/** The figures as a table, each beside what it should stay under. */
export function windowTable({ firstProofSeconds, medianTintMs, longestTaskMs }: WindowFigures): string {
  const tasks = Object.entries(longestTaskMs).map(
    ([what, ms]) => `| longest task, ${what} | ${ms === null ? 'under 50' : ms.toFixed(0)} ms | 100 ms |`,
  );
  return [
    `\nThe window, built, ${VIEWPORT.width} x ${VIEWPORT.height}\n`,
    '| figure | measured | target |',
    '|---|---|---|',
    `| decoded drawing to first coarse proof | ${firstProofSeconds.toFixed(1)} s | 3 s |`,
    `| tint to coarse proof, median of ${TINTS} | ${medianTintMs.toFixed(0)} ms | 150 ms |`,
    ...tasks,
  ].join('\n');
}

/** The demo in the built app, at a desk. */
export async function measureWindow(): Promise<WindowFigures> {
  const app = await serveApp();
  const browser = await chromium.launch({ executablePath: findChromium()!, args: CHROMIUM_FLAGS });
  try {
    const page = await browser.newPage({ viewport: VIEWPORT });
    page.setDefaultTimeout(PATIENCE_MS);
    await watch(page);
    await page.goto(app.url);
    await settled(page);
    const load = await page.evaluate(() => globalThis.seen);
    const tints = await during(page, () => tintEight(page));
    const tintMs = tintTimes(tints);
    const longestTaskMs = {
      load: longest(load),
      'eight tints': longest(tints),
      hover: longest(await during(page, () => hover(page))),
      'wheel zoom': longest(await during(page, () => wheel(page))),
      'docket slider': longest(await during(page, () => slide(page))),
    };
    return {
      firstProofSeconds: firstProof(load),
      tintMs,
      medianTintMs: median(tintMs),
      longestTaskMs,
    };
  } finally {
    await browser.close();
    await app.stop();
  }
}

/** Waits until the workers rest and everything is on screen. */
async function settled(page: Page): Promise<void> {
  await page.waitForTimeout(50);
  await page.getByText(/^\d+\.\d s · \d+ MB$/).waitFor();
  await page.waitForTimeout(400);
}

/** Seconds from the step after the drawing's decoding to the first coarse picture. */
function firstProof({ steps, painted }: Seen): number {
  const decoding = steps.findIndex(({ node }) => node === 'line-drawing');
  const decoded = steps.slice(decoding).find(({ node }) => node !== 'line-drawing')!;
  return (painted.find(({ scale }) => scale === COARSE)!.at - decoded.at) / 1000;
}

/** Places of large regions in shares of the sheet, and a recipe that none of them prints. */
function wideRegions(): { across: number; down: number }[] {
  const { register, colourways, colourway } = parseJob(readFileSync(DEMO, 'utf8'), nodeKinds);
  const { recipes } = colourways.find(({ id }) => id === colourway)!;
  const boxes = register.regions.map(({ boxMm }) => boxMm);
  const [width, height] = [2, 3].map((side) => Math.max(...boxes.map((box) => box[side]!)));
  return register.regions
    .filter(({ id }) => recipeKey(recipes[id] ?? {}) !== recipeKey({ pantile: 75 }))
    .sort((a, b) => b.areaMm2 - a.areaMm2)
    .slice(0, TINTS)
    .map(({ anchorMm: [x, y] }) => ({ across: x / width!, down: y / height! }));
}

async function tintEight(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Pantile 75 %', exact: true }).first().click();
  for (const { across, down } of wideRegions()) {
    const { x, y } = await onSheet(page, across, down);
    await page.mouse.click(x, y);
    await settled(page);
  }
}

/** For each click on the print, how long until the next coarse picture. */
function tintTimes({ clicks, painted }: Seen): number[] {
  const coarse = painted.filter(({ scale }) => scale === COARSE);
  return clicks.slice(-TINTS).map((click) => coarse.find(({ at }) => at > click)!.at - click);
}

async function hover(page: Page): Promise<void> {
  for (let row = 0; row < 4; row++) {
    const [left, right] = [
      await onSheet(page, 0.05, 0.2 + row / 5),
      await onSheet(page, 0.95, 0.25 + row / 5),
    ];
    await page.mouse.move(left.x, left.y);
    await page.mouse.move(right.x, right.y, { steps: 40 });
  }
  await page.waitForTimeout(200);
}

async function wheel(page: Page): Promise<void> {
  const { x, y } = await onSheet(page, 0.4, 0.4);
  await page.mouse.move(x, y);
  for (const turn of [...Array<number>(16).fill(-120), ...Array<number>(24).fill(120)]) {
    await page.mouse.wheel(0, turn);
    await page.waitForTimeout(40);
  }
  await settled(page);
}

async function slide(page: Page): Promise<void> {
  await page
    .getByRole('button', { name: /^Plate grain/ })
    .first()
    .click();
  const slider = page.getByRole('region', { name: 'Docket' }).getByRole('slider').first();
  await slider.scrollIntoViewIfNeeded();
  const { x, y, width, height } = (await slider.boundingBox())!;
  await page.mouse.move(x + width * 0.3, y + height / 2);
  await page.mouse.down();
  for (let i = 0; i < 40; i++) {
    await page.mouse.move(x + width * (0.3 + i / 80), y + height / 2);
    await page.waitForTimeout(25);
  }
  await page.mouse.up();
  await settled(page);
}

function median(figures: readonly number[]): number {
  const sorted = [...figures].sort((a, b) => a - b);
  return (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2;
}
