/**
 * Rooms, written out from their definition and without any regard to speed, to check the fast search against.
 * A basin is called by the first pixel, in raster order, of the ground it begins with; a room by the first of its basins.
 */
export interface SlowRooms {
  /** Room by pixel; -1 on line. */
  room: number[];
  walls: SlowWall[];
}

export interface SlowWall {
  /** The lower room first. */
  between: [number, number];
  width: number;
  /** The pixels on either side of the wall's widest places. */
  widest: Set<number>;
}

/** A picture: its line, and the half gap in px. */
interface Question {
  isLine: (x: number, y: number) => boolean;
  width: number;
  height: number;
  half: number;
  neck: number;
}

export function slowRooms(question: Question): SlowRooms {
  const { width, height, half, neck } = question;
  const all = Array.from({ length: width * height }, (_, i) => i);
  const distance2 = slowDistances(question);
  const beside = all.map((i) => besideOf(i, width, height));
  const basin = slowBasins(distance2, beside, half * half);
  const peak = new Map<number, number>();
  for (const i of all)
    if (basin[i]! >= 0) peak.set(basin[i]!, Math.max(peak.get(basin[i]!) ?? 0, distance2[i]!));

  const saddles = new Map<string, { a: number; b: number; saddle: number }>();
  for (const { a, b, saddle } of touching(basin, distance2, beside)) {
    const known = saddles.get(`${a} ${b}`);
    if (!known || saddle > known.saddle) saddles.set(`${a} ${b}`, { a, b, saddle });
  }
  const set = new Map([...peak].map(([name, top]) => [name, { members: [name], top }]));
  const falling = [...saddles.values()].sort((p, q) => q.saddle - p.saddle || p.a - q.a || p.b - q.b);
  for (const { a, b, saddle } of falling) {
    const [one, other] = [set.get(a)!, set.get(b)!];
    if (one === other || saddle < neck * neck * Math.min(one.top, other.top)) continue;
    const both = { members: [...one.members, ...other.members], top: Math.max(one.top, other.top) };
    for (const member of both.members) set.set(member, both);
  }
  const room = basin.map((name) => (name < 0 ? -1 : Math.min(...set.get(name)!.members)));
  return { room, walls: slowWalls(touching(room, distance2, beside), width) };
}

/** Indices of the pixels above, left, right and below. */
function besideOf(i: number, width: number, height: number): number[] {
  const [x, y] = [i % width, Math.floor(i / width)];
  const places = [
    [x, y - 1],
    [x - 1, y],
    [x + 1, y],
    [x, y + 1],
  ] as const;
  return places.flatMap(([u, v]) => (u < 0 || v < 0 || u >= width || v >= height ? [] : [v * width + u]));
}

/** Squared distance to the nearest line pixel, pixels just outside the picture being line. */
function slowDistances({ isLine, width, height }: Question): number[] {
  const lines: [number, number][] = [];
  for (let y = -1; y <= height; y++)
    for (let x = -1; x <= width; x++)
      if (x < 0 || y < 0 || x === width || y === height || isLine(x, y)) lines.push([x, y]);
  return Array.from({ length: width * height }, (_, i) => {
    const [x, y] = [i % width, Math.floor(i / width)];
    return Math.min(...lines.map(([u, v]) => (u - x) ** 2 + (v - y) ** 2));
  });
}

function slowBasins(distance2: readonly number[], beside: readonly number[][], half2: number): number[] {
  const basin = distance2.map(() => -1);
  const flood = (first: number, belongs: (i: number) => boolean) => {
    const open = [first];
    basin[first] = first;
    for (let i = open.pop(); i !== undefined; i = open.pop())
      for (const near of beside[i]!)
        if (basin[near] === -1 && belongs(near)) {
          basin[near] = first;
          open.push(near);
        }
  };
  distance2.forEach((d2, i) => {
    if (d2 > half2 && basin[i] === -1) flood(i, (near) => distance2[near]! > half2);
  });
  const levels = [...new Set(distance2)].filter((d2) => d2 > 0 && d2 <= half2).sort((p, q) => q - p);
  for (const level of levels) {
    const ground = [...distance2.keys()].filter((i) => distance2[i] === level);
    for (const i of ground) {
      const steepest = beside[i]!.reduce(
        (best, near) => (distance2[near]! > distance2[best]! ? near : best),
        i,
      );
      if (steepest !== i) basin[i] = basin[steepest]!;
    }
    for (let moved = true; moved; ) {
      const reached = ground.flatMap((i) => {
        const ways = beside[i]!.filter((near) => distance2[near] === level && basin[near] !== -1);
        return basin[i] === -1 && ways.length > 0
          ? [[i, Math.min(...ways.map((way) => basin[way]!))] as const]
          : [];
      });
      for (const [i, name] of reached) basin[i] = name;
      moved = reached.length > 0;
    }
    for (const i of ground) if (basin[i] === -1) flood(i, (near) => distance2[near] === level);
  }
  return basin;
}

interface Touch {
  p: number;
  q: number;
  a: number;
  b: number;
  saddle: number;
}

/** Pairs of neighbouring pixels of two names, the lower name first. */
function touching(
  name: readonly number[],
  distance2: readonly number[],
  beside: readonly number[][],
): Touch[] {
  return name.flatMap((a, p) =>
    beside[p]!.flatMap((q) => {
      const b = name[q]!;
      return a < 0 || a >= b ? [] : [{ p, q, a, b, saddle: Math.min(distance2[p]!, distance2[q]!) }];
    }),
  );
}

function slowWalls(touches: readonly Touch[], width: number): SlowWall[] {
  const near = (i: number, j: number) =>
    Math.abs((i % width) - (j % width)) <= 1 && Math.abs(Math.floor(i / width) - Math.floor(j / width)) <= 1;
  const meet = (s: Touch, t: Touch) =>
    s.a === t.a && s.b === t.b && [s.p, s.q].some((i) => near(i, t.p) || near(i, t.q));
  const left = [...touches];
  const walls: SlowWall[] = [];
  for (let start = left.pop(); start !== undefined; start = left.pop()) {
    const run = [start];
    for (let k = 0; k < run.length; k++)
      for (let j = left.length - 1; j >= 0; j--) if (meet(run[k]!, left[j]!)) run.push(...left.splice(j, 1));
    const most = Math.max(...run.map(({ saddle }) => saddle));
    const widest = run.filter(({ saddle }) => saddle === most).flatMap(({ p, q }) => [p, q]);
    walls.push({ between: [start.a, start.b], width: 2 * Math.sqrt(most) - 1, widest: new Set(widest) });
  }
  return walls;
}
