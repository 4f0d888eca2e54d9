import { readFileSync } from 'node:fs';
import { strFromU8, unzipSync } from 'fflate';
import { expect, it } from 'vitest';
import { parseJob } from '../../../src/graph/parse-job.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import { recipesInUse } from '../../../src/store/recipe-list.ts';
import { bytesOf, DESKTOP, settled, Visitor } from './visitor.ts';

const DEMO = new URL('../../../graphs-demo/artichoke-packet.json', import.meta.url);

it('tints regions and saves without a pointer', async () => {
  const demo = parseJob(readFileSync(DEMO, 'utf8'), nodeKinds);
  const visitor = new Visitor(DESKTOP);
  const page = await visitor.open();
  await settled(page);
  await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));

  const print = page.getByRole('application', { name: 'The print' });
  for (let presses = 0; presses < 120; presses++) {
    if (await print.evaluate((element) => element === document.activeElement)) break;
    await page.keyboard.press('Tab');
  }
  expect(await print.evaluate((element) => element === document.activeElement)).toBe(true);
  await page.keyboard.press('7');
  for (const way of ['ArrowRight', 'ArrowDown', 'ArrowLeft']) {
    await page.keyboard.press(`Alt+${way}`);
    await page.keyboard.press('Enter');
  }
  const saved = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  const job = parseJob(strFromU8(unzipSync(await bytesOf(await saved))['job.json']!), nodeKinds);

  const seventh = recipesInUse(demo)[6];
  const before = demo.colourways[0]!.recipes;
  const changed = Object.entries(job.colourways[0]!.recipes).filter(
    ([id, recipe]) => JSON.stringify(recipe) !== JSON.stringify(before[id]),
  );
  expect(changed.length).toBeGreaterThan(0);
  expect(changed.length).toBeLessThanOrEqual(3);
  for (const [, recipe] of changed) expect(recipe).toEqual(seventh);
  expect(visitor.errors).toEqual([]);
  await visitor.leave();
});
