import { expect, test } from 'vitest';
import { ACTUAL_PX_PER_MM, fitOnDesk, pan, reveal, toDesk, toMm, zoom } from '../../../src/view/camera.ts';

const SHEET = { width: 200, height: 100 };
const DESK = { width: 1000, height: 800 };

test('the whole sheet fits in the middle, as large as the margin allows', () => {
  const camera = fitOnDesk(SHEET, DESK);
  expect(camera.pxPerMm).toBeCloseTo(920 / 200);
  expect(toDesk(camera, { x: 100, y: 50 })).toEqual({ x: 500, y: 400 });
  expect(camera.x).toBeCloseTo(40);
});

test('a sheet fits on a desk that is hardly there', () => {
  expect(fitOnDesk(SHEET, { width: 8, height: 8 }).pxPerMm).toBeCloseTo(0.03);
});

test('the place under the pointer stays there while zooming', () => {
  let camera = fitOnDesk(SHEET, DESK);
  const pointer = { x: 317, y: 411 };
  const place = toMm(camera, pointer);
  for (const factor of [1.5, 4, 0.3, 0.9]) {
    camera = zoom(camera, factor, pointer, SHEET, DESK);
    expect(toMm(camera, pointer).x).toBeCloseTo(place.x, 9);
    expect(toMm(camera, pointer).y).toBeCloseTo(place.y, 9);
  }
});

test('zoom ends at 32 times the actual size and at half of the fitted size', () => {
  const fitted = fitOnDesk(SHEET, DESK);
  const middle = { x: 500, y: 400 };
  expect(zoom(fitted, 1e9, middle, SHEET, DESK).pxPerMm).toBeCloseTo(32 * ACTUAL_PX_PER_MM);
  expect(zoom(fitted, 1e-9, middle, SHEET, DESK).pxPerMm).toBeCloseTo(0.05 * ACTUAL_PX_PER_MM);
  const poster = { width: 20_000, height: 10_000 };
  const whole = fitOnDesk(poster, DESK);
  expect(zoom(whole, 1e-9, middle, poster, DESK).pxPerMm).toBeCloseTo(whole.pxPerMm / 2);
});

test('some of the sheet always stays on the desk', () => {
  const far = pan(fitOnDesk(SHEET, DESK), { x: 5000, y: -5000 }, SHEET, DESK);
  expect(far.x).toBe(DESK.width - 72);
  expect(toDesk(far, { x: 0, y: SHEET.height }).y).toBeCloseTo(72);
});

test('a place out of view is brought in, one in view moves nothing', () => {
  const close = zoom(fitOnDesk(SHEET, DESK), 4, { x: 500, y: 400 }, SHEET, DESK);
  expect(reveal(close, { x: 100, y: 50 }, SHEET, DESK)).toBe(close);
  const shown = toDesk(reveal(close, { x: 0, y: 50 }, SHEET, DESK), { x: 0, y: 50 });
  expect(shown.x).toBeCloseTo(72);
  expect(shown.y).toBeCloseTo(400);
});
