import { expect, it, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import html from '../../src/index.html?raw';

/** Share of pixels that differ between two pictures of one size. */
function difference(a: ImageData, b: ImageData): number {
  let differ = 0;
  for (let p = 0; p < a.data.length; p += 4) if (a.data[p] !== b.data[p]) differ++;
  return (differ * 4) / a.data.length;
}

function picture(): ImageData {
  const canvas = document.querySelector('canvas')!;
  return canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
}

it('opens with the demo job on screen and shows each of its colourways', async () => {
  document.body.innerHTML = html.slice(html.indexOf('<body>') + 6, html.indexOf('<script'));
  await import('../../src/app/page.ts');
  const done = { timeout: 60_000 };
  await vi.waitFor(() => expect(document.getElementById('status')!.textContent).toMatch(/^Proof in/), done);
  expect(document.getElementById('job')!.textContent).toBe('Globe artichoke, packet front');
  const daylight = picture();
  expect([daylight.width, daylight.height]).toEqual([2000, 2500]);
  await userEvent.click(page.getByRole('button', { name: 'Dusk' }));
  await vi.waitFor(
    () => expect(document.getElementById('status')!.textContent).not.toMatch(/^Proof in/),
    done,
  );
  await vi.waitFor(() => expect(document.getElementById('status')!.textContent).toMatch(/^Proof in/), done);
  expect(difference(daylight, picture())).toBeGreaterThan(0.3);
  expect(page.getByRole('button', { name: 'Dusk' }).element().ariaPressed).toBe('true');
});
