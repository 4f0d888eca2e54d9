import { describe, expect, it } from 'vitest';
import { columnDistance } from '../../../workers/kernels/distance.ts';
import { type FoundRooms, findRooms } from '../../../workers/kernels/find-rooms.ts';
import { nearDistance } from '../../../workers/kernels/near-distance.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { NECK } from '../../../workers/kernels/rooms.ts';
import { drawnPlane, flatPlane, picture, randomPicture, rowsOf } from '../support/pictures.ts';
import { randomOf } from '../support/random.ts';
import { slowRooms } from '../support/slow-rooms.ts';

interface Found extends FoundRooms {
  /** Room by pixel, 0 on line. */
  room: Uint32Array;
}

function roomsOf({ width, height, data }: Plane, gap: number): Found {
  const half = (gap + 1) / 2;
  const limit2 = Math.floor((half / NECK) ** 2) + 1;
  const columns = new Uint16Array(width * height);
  const limit = Math.ceil(Math.sqrt(limit2));
  columnDistance(
    { data, width, height, lowest: 128, highest: 255, limit, framed: true, out: columns },
    0,
    width,
  );
  const distance2 = new Uint16Array(width * height);
  const zones = new Uint8Array(width * height);
  nearDistance({ columns, width, near2: half * half, limit2, distance2, zones }, 0, height);
  const labels = new Uint32Array(width * height);
  const found = findRooms({ distance2, zones, width, height, labels });
  return { ...found, room: labels.map((label) => found.roomOf[label]!) };
}

/** Strokes of one to three pixels here and there. */
function scribble(width: number, height: number, strokes: number, seed: number): Plane {
  const random = randomOf(seed);
  const plane = flatPlane(width, height);
  for (let k = 0; k < strokes; k++) {
    const [x, y, u, v] = [width, height, width, height].map((extent) => random() * extent) as [
      number,
      number,
      number,
      number,
    ];
    const thick = 1 + Math.floor(random() * 3);
    const steps = Math.ceil(Math.hypot(u - x, v - y)) + 1;
    for (let n = 0; n <= steps; n++) {
      const [left, top] = [x + ((u - x) * n) / steps, y + ((v - y) * n) / steps].map(Math.floor);
      for (let dy = 0; dy < thick; dy++)
        for (let dx = 0; dx < thick; dx++) {
          const [px, py] = [left! + dx, top! + dy];
          if (px < width && py < height) plane.data[py * width + px] = 255;
        }
    }
  }
  return plane;
}

/** The fast search must say what the written-out one says, but for how it numbers. */
function expectAsWrittenOut(plane: Plane, gap: number): { rooms: number; walls: number } {
  const { width, height, data } = plane;
  const isLine = (x: number, y: number) => data[y * width + x]! >= 128;
  const slow = slowRooms({ isLine, width, height, half: (gap + 1) / 2, neck: NECK });
  const fast = roomsOf(plane, gap);
  const names = [...new Set(slow.room.filter((name) => name >= 0))].sort((a, b) => a - b);
  expect(fast.count).toBe(names.length);
  const numbered = slow.room.map((name) => names.indexOf(name) + 1);
  expect(rowsOf(fast.room, width)).toEqual(rowsOf(numbered, width));

  expect(fast.walls.width.length).toBe(slow.walls.length);
  const left = [...slow.walls];
  fast.walls.place.forEach((place, k) => {
    const between = [fast.walls.a[k]!, fast.walls.b[k]!];
    const same = left.findIndex(
      (wall) =>
        wall.widest.has(place) && wall.between.every((name, n) => names.indexOf(name) + 1 === between[n]),
    );
    expect(left[same]?.width).toBe(fast.walls.width[k]);
    left.splice(same, 1);
  });
  return { rooms: fast.count, walls: fast.walls.width.length };
}

describe('rooms equal those of the definition written out, walls by place and width too', () => {
  const GAPS = [0, 1, 2, 2.4, 3, 5, 8, 11.8, 20];

  it.each(GAPS)('on scribbles, with a gap of %d px', (gap) => {
    let walls = 0;
    for (let seed = 0; seed < 12; seed++)
      walls += expectAsWrittenOut(scribble(30 + seed, 41 - seed, 2 + (seed % 7), seed), gap).walls;
    if (gap >= 3) expect(walls).toBeGreaterThan(20);
  });

  it.each(GAPS)('on scattered pixels, with a gap of %d px', (gap) => {
    [0.004, 0.02, 0.06, 0.15, 0.35, 0.6].forEach((density, seed) => {
      expectAsWrittenOut(randomPicture(37 - seed, 29 + seed, density, seed), gap);
    });
  });

  it.each(GAPS)('on a picture that is one pixel high, or wide, with a gap of %d px', (gap) => {
    expectAsWrittenOut(randomPicture(60, 1, 0.1, 5), gap);
    expectAsWrittenOut(randomPicture(1, 60, 0.1, 6), gap);
  });

  it('on straight corridors, whose middles are level ground', () => {
    for (const breadth of [4, 5, 6, 7])
      for (const gap of [3, 5, 6, 8]) {
        const corridors = drawnPlane(44, 36, (x, y) => {
          const wall = y % (breadth + 1) === 0 && (x < 20 || y % 2 === 0);
          return wall || (x === 20 && y % 9 !== 4) ? 255 : 0;
        });
        expectAsWrittenOut(corridors, gap);
      }
  });
});

describe('level ground', () => {
  it('between two fields is parted in the middle of the opening; the odd pixel goes to the lower room', () => {
    // the passage is five pixels long: two on either side and one as near to both
    const passage = picture(
      '.......#####.......',
      '.......#####.......',
      '...................',
      '.......#####.......',
      '.......#####.......',
    );
    const { room, walls, count } = roomsOf(passage, 1);
    expect(count).toBe(2);
    expect([...room.subarray(2 * 19 + 7, 2 * 19 + 12)]).toEqual([1, 1, 1, 2, 2]);
    expect(walls.width).toEqual(Float64Array.of(1));
  });

  it('stands as lower whichever field begins first in reading order', () => {
    // as above, but the right-hand field begins a row earlier
    const passage = picture(
      '############.......',
      '.......#####.......',
      '.......#####.......',
      '...................',
      '.......#####.......',
      '.......#####.......',
    );
    const { room } = roomsOf(passage, 1);
    const right = room[18]!;
    expect(right).toBe(1);
    expect([...room.subarray(3 * 19 + 7, 3 * 19 + 12)]).toEqual([2, 2, 1, 1, 1]);
  });
});

describe('a pixel in an opening with two steepest neighbours goes', () => {
  const [ACROSS, DOWN] = [(x: number) => x === 0, (_: number, y: number) => y === 0];
  /** Two blocks, corner to corner, leave a slanting opening: one above on the left and one below on the right. */
  const slanted = (near: number, far: number) => (x: number, y: number) =>
    (x >= near && y >= near) || (x <= -far && y <= -far);
  const inMirror = (isLine: (x: number, y: number) => boolean) => (x: number, y: number) => isLine(-x, y);

  it.each([
    ['north before west', slanted(1, 2), [0, -1], [-1, 0]],
    ['north before east', inMirror(slanted(1, 2)), [0, -1], [1, 0]],
    ['north before south', DOWN, [0, -1], [0, 1]],
    ['west before east', ACROSS, [-1, 0], [1, 0]],
    ['west before south', inMirror(slanted(2, 1)), [-1, 0], [0, 1]],
    ['east before south', slanted(2, 1), [1, 0], [0, 1]],
  ] as const)('%s', (_, isLine, [x, y], [u, v]) => {
    const opening = drawnPlane(31, 31, (px, py) => {
      const [dx, dy] = [px - 15, py - 15];
      return (dx !== 0 || dy !== 0) && isLine(dx, dy) ? 255 : 0;
    });
    const { room } = roomsOf(opening, 3);
    const at = (dx: number, dy: number) => room[(15 + dy) * 31 + 15 + dx];
    expect(at(x, y)).not.toBe(at(u, v));
    expect(at(0, 0)).toBe(at(x, y));
  });
});
