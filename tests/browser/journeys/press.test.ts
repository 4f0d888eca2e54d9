import { strFromU8, unzipSync } from 'fflate';
import { afterEach, describe, expect, it } from 'vitest';
import { reportSchema } from '../../../src/graph/report.ts';
import { Desk, run, separated } from '../../outside/files/programs.ts';
import { accessFaults, dropTray } from './steps.ts';
import { bytesOf, DESKTOP, type Device, settled, TABLET, Visitor } from './visitor.ts';

const DEVICES: [string, Device][] = [
  ['at a desk, 1440 x 900', DESKTOP],
  ['on a tablet, 1180 x 820 with touch', TABLET],
];

describe.each(DEVICES)('%s', (_, device) => {
  let visitor: Visitor;
  const desk = new Desk();

  afterEach(async () => {
    expect(visitor.errors).toEqual([]);
    await visitor.leave();
    desk.remove();
  });

  it('leads from the press check to a press PDF on a sheet with bleed', async () => {
    visitor = new Visitor(device);
    const page = await visitor.open();
    await settled(page);
    await dropTray(page);
    const panel = page.getByRole('region', { name: 'Press check' });
    await panel.getByRole('button', { name: /^Press check/ }).click();
    await panel.getByLabel('Press', { exact: true }).selectOption('relief');
    await panel.getByRole('button', { name: 'Check the plates' }).click();
    const warned = panel.getByRole('region', { name: 'Look at this' });
    await warned.waitFor({ timeout: 60_000 });
    expect(await accessFaults(page), 'the press check').toEqual([]);
    const waiting = await warned.getByRole('listitem').count();
    await warned
      .getByRole('button', { name: /^Mark as meant/ })
      .first()
      .click();
    await panel.getByRole('region', { name: 'Meant' }).waitFor();
    expect(await warned.getByRole('listitem').count()).toBe(waiting - 1);

    await page.getByRole('button', { name: 'Deliver' }).click();
    await page.getByRole('button', { name: 'Add a press sheet' }).click();
    const bleed = page.getByRole('textbox', { name: 'Bleed, mm', exact: true });
    await bleed.fill('3');
    await bleed.press('Enter');
    await settled(page);
    await page.getByRole('button', { name: 'Deliver' }).click();
    await page.getByRole('checkbox', { name: /^Press PDF/ }).check();
    expect(await accessFaults(page), 'delivery').toEqual([]);
    const delivered = page.waitForEvent('download', { timeout: 120_000 });
    await page.getByRole('button', { name: 'Make the plates' }).click();
    const files = unzipSync(await bytesOf(await delivered));
    const report = reportSchema.parse(JSON.parse(strFromU8(files['report.json']!)));
    expect(report.complaints.some(({ meant }) => meant)).toBe(false);
    const pdf = desk.file('plates.pdf', files['plates.pdf']!);
    const box = (name: string) =>
      new RegExp(`${name}:\\s+(.*)`)
        .exec(run('pdfinfo', '-box', pdf))![1]!
        .trim()
        .split(/\s+/)
        .map(Number);
    const [left, bottom, right, top] = box('TrimBox');
    const [bleedLeft] = box('BleedBox');
    const mm = (points: number) => (points * 25.4) / 72;
    expect(mm(right! - left!)).toBeCloseTo(report.drawing.mm[0], 1);
    expect(mm(top! - bottom!)).toBeCloseTo(report.drawing.mm[1], 1);
    expect(mm(left! - bleedLeft!)).toBeCloseTo(3, 1);
    const plates = await separated(desk, pdf, 150);
    for (const { id } of report.plates) expect([...plates.keys()]).toContain(id);
  });
});
