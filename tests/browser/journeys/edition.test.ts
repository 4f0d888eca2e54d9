import { PDFDocument } from '@cantoo/pdf-lib';
import { strFromU8, unzipSync } from 'fflate';
import { afterEach, expect, it } from 'vitest';
import { parseJob } from '../../../src/graph/parse-job.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import { accessFaults } from './steps.ts';
import { bytesOf, DESKTOP, settled, Visitor } from './visitor.ts';

let visitor: Visitor;

afterEach(async () => {
  expect(visitor.errors).toEqual([]);
  await visitor.leave();
});

it('an edition shows its run, and is delivered as one PDF at its true size', async () => {
  visitor = new Visitor(DESKTOP);
  const page = await visitor.open();
  await settled(page);
  await page.getByRole('button', { name: /Globe artichoke, packet front/ }).click();
  await page.getByRole('button', { name: 'Edition: a run of sheets' }).click();
  await page.getByLabel('Sheets in the run').fill('2');
  await page.getByRole('button', { name: 'Show the run' }).click();
  await page.getByRole('img', { name: 'All 2 sheets of the run, small' }).waitFor({ timeout: 90_000 });
  expect(await accessFaults(page), 'the edition').toEqual([]);
  await page.getByLabel('PDF at').fill('75');
  const delivered = page.waitForEvent('download', { timeout: 90_000 });
  await page.getByRole('button', { name: 'PDF of all sheets' }).click();
  const pdf = await PDFDocument.load(await bytesOf(await delivered));
  const size = {
    width: expect.closeTo((169.33 * 72) / 25.4, 0),
    height: expect.closeTo((221.67 * 72) / 25.4, 0),
  };
  expect(pdf.getPages().map((each) => each.getSize())).toEqual([size, size]);
});

it('settings are begun from ours, kept under a name and saved with the job', async () => {
  visitor = new Visitor(DESKTOP);
  const page = await visitor.open();
  await settled(page);
  await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  await page
    .getByRole('button', { name: /^Plate grain/ })
    .first()
    .click();
  const kept = page.getByRole('combobox', { name: 'Kept settings' });
  await kept.selectOption({ label: 'Hoar frost' });
  await page.getByRole('button', { name: 'fibre', exact: true }).click();
  await page.getByRole('button', { name: 'keep these settings of Plate grain' }).click();
  await page.getByLabel('Name of the kept settings').fill('Frosted straw');
  await page.keyboard.press('Enter');
  expect(await kept.locator('option:checked').textContent()).toBe('Frosted straw');
  expect(await accessFaults(page), 'kept settings').toEqual([]);
  const saved = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  const job = parseJob(strFromU8(unzipSync(await bytesOf(await saved))['job.json']!), nodeKinds);
  const frost = nodeKinds.get('plate-grain')!.presets!.list.find(({ name }) => name === 'Hoar frost')!;
  expect(job.kept).toEqual([
    { kind: 'plate-grain', name: 'Frosted straw', settings: { ...frost.settings, pattern: 'fibre' } },
  ]);
});
