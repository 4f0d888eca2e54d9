import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type Gestures, gestures, type Touch } from '../../../src/view/gesture.ts';

let told: string[];
let hand: Gestures;
let inHand: boolean;
let picksUp: boolean;

const at = (x: number, y = 0) => ({ x, y });
const touch = (x: number, more: Partial<Touch> = {}): Touch => ({ id: 1, at: at(x), kind: 'touch', ...more });
const mouse = (x: number, more: Partial<Touch> = {}) => touch(x, { kind: 'mouse', ...more });

beforeEach(() => {
  vi.useFakeTimers();
  told = [];
  inHand = true;
  picksUp = true;
  hand = gestures({
    tap: ({ x }, alt) => told.push(`tap ${x}${alt ? ' alt' : ''}`),
    hold: ({ x }) => {
      told.push(`hold ${x}`);
      return picksUp;
    },
    strokeStart: ({ x }) => {
      if (inHand) told.push(`stroke from ${x}`);
      return inHand;
    },
    strokeTo: (from, to) => told.push(`${from.x} to ${to.x}`),
    strokeEnd: () => told.push('stroke ends'),
    strokeDrop: () => told.push('stroke dropped'),
    pan: ({ x }) => told.push(`pan ${x}`),
    pinch: (factor, about) => told.push(`pinch ${factor} at ${about.x}`),
    moving: (moves) => told.push(moves ? 'moves' : 'rests'),
  });
});

afterEach(() => {
  vi.useRealTimers();
});

test('down and up is a tap, a tremble too; Alt is told', () => {
  hand.down(touch(10));
  hand.move(touch(13));
  hand.up(touch(13));
  hand.down(mouse(20, { alt: true }));
  hand.up(mouse(20));
  expect(told).toEqual(['tap 13', 'tap 20 alt']);
});

test('a drag strokes from where it went down', () => {
  hand.down(mouse(0));
  hand.move(mouse(30));
  hand.move(mouse(50));
  hand.up(mouse(50));
  expect(told).toEqual(['stroke from 0', 'moves', '0 to 30', '30 to 50', 'stroke ends', 'rests']);
});

test('with an empty hand, the space bar or the middle button a drag moves the print', () => {
  inHand = false;
  hand.down(mouse(0));
  hand.move(mouse(30));
  hand.up(mouse(30));
  inHand = true;
  hand.down(mouse(0, { moves: true }));
  hand.move(mouse(7));
  hand.up(mouse(7));
  expect(told).toEqual(['moves', 'pan 30', 'rests', 'moves', 'pan 7', 'rests']);
});

test('a finger that rests picks up and does not tap; the mouse may rest', () => {
  hand.down(touch(5));
  vi.advanceTimersByTime(499);
  expect(told).toEqual([]);
  vi.advanceTimersByTime(1);
  hand.move(touch(80));
  hand.up(touch(80));
  hand.down(mouse(5));
  vi.advanceTimersByTime(2000);
  hand.up(mouse(5));
  expect(told).toEqual(['hold 5', 'tap 5']);
});

test('two fingers pan and pinch, and tint nothing; the one left goes on panning', () => {
  hand.down(touch(0));
  hand.down(touch(100, { id: 2 }));
  hand.move(touch(200, { id: 2 }));
  hand.up(touch(200, { id: 2 }));
  hand.move(touch(5));
  hand.up(touch(5));
  vi.advanceTimersByTime(1000);
  expect(told).toEqual(['moves', 'pan 50', 'pinch 2 at 100', 'pan 5', 'rests']);
});

test('a rest that means nothing may still become a stroke or a tap', () => {
  picksUp = false;
  hand.down(touch(5));
  vi.advanceTimersByTime(600);
  hand.move(touch(60));
  hand.up(touch(60));
  expect(told).toEqual(['hold 5', 'stroke from 5', 'moves', '5 to 60', 'stroke ends', 'rests']);
});

test('a second finger drops a stroke, and a cancelled touch is no tap', () => {
  hand.down(touch(0));
  hand.move(touch(40));
  hand.down(touch(90, { id: 2 }));
  hand.cancel(1);
  hand.cancel(2);
  hand.down(touch(0));
  hand.cancel(1);
  hand.up(touch(0));
  expect(told).toEqual(['stroke from 0', 'moves', '0 to 40', 'stroke dropped', 'rests']);
});
