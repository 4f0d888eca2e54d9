import { afterEach, describe, expect, it } from 'vitest';
import { accessFaults } from './steps.ts';
import { DESKTOP, type Device, settled, TABLET, Visitor } from './visitor.ts';

describe.each<[string, Device]>([
  ['at a desk', DESKTOP],
  ['on a tablet with touch', TABLET],
])('register slack, %s', (_, device) => {
  let visitor: Visitor;

  afterEach(async () => {
    expect(visitor.errors).toEqual([]);
    await visitor.leave();
  });

  it('is shown on the print, is mended in one press, and tells why borders are trapped', async () => {
    visitor = new Visitor(device);
    const page = await visitor.open();
    await settled(page);
    await page.getByRole('button', { name: 'slack', exact: true }).click();
    const measured = page.getByRole('heading', { name: 'Least slack of each plate' });
    await measured.waitFor({ timeout: 60_000 });
    await page.getByRole('heading', { name: /^Paper shows at \d+ borders$/ }).waitFor();
    expect(await accessFaults(page), 'register slack').toEqual([]);
    await page.getByRole('button', { name: 'Mend all' }).click();
    await page.getByText('Every border holds').waitFor({ timeout: 60_000 });
    await page.getByText(/^\d+ of \d+ borders trapped$/).waitFor({ timeout: 60_000 });
    await page
      .getByRole('button', { name: /^why: / })
      .first()
      .click();
    await page
      .getByText(/The lighter colour spreads under the darker/)
      .first()
      .waitFor();
    expect(await accessFaults(page), 'traps').toEqual([]);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await page.getByRole('heading', { name: /^Paper shows at \d+ borders$/ }).waitFor({ timeout: 60_000 });
  });
});
