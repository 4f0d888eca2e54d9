/** Levels of the light are kept in this many parts, so that the way between two blocks is smooth. */
export const LIGHT_STEP = 16;

/** Between neighbouring blocks, light falls at most to this share; what falls faster is drawn, not shade. */
const STEADY = 0.85;
/** Shares of the blocks that may be darker or brighter than what the spread is measured between. */
const LEFT_OUT = 0.04;
const SMOOTHINGS = 2;

export interface PaperLightArgs {
  /** Brightness of each block, from `paperBlocks`. */
  levels: Uint8Array;
  columns: number;
  rows: number;
  /** Blocks at least this bright are paper, whatever stands around them. */
  sure: number;
}

export interface PaperLight {
  /** Brightness of the bare sheet at the middle of each block, in parts of 1 / LIGHT_STEP. */
  light: Uint16Array;
  /** How much darker the darkest paper is than the brightest, 0..1. */
  spread: number;
}

/**
 * The light on the sheet from the brightness of its blocks. Paper is followed from the surely bright blocks into
 * the shade as long as it darkens gently; what falls off suddenly is drawn solid, and the light over it is taken
 * from the paper around. Own method.
 */
export function paperLight(args: PaperLightArgs): PaperLight {
  const { levels } = args;
  const light = new Uint16Array(levels.length);
  const order = paperFrom(args, light);
  if (order.length === 0) return { light: light.fill(255 * LIGHT_STEP), spread: 0 };
  const known = [...order].map((block) => light[block]!).sort((a, b) => a - b);
  const skipped = Math.floor(known.length * LEFT_OUT);
  const spread = 1 - known[skipped]! / known[known.length - 1 - skipped]!;
  fillIn(args, light, order);
  let smooth: Uint16Array = light;
  for (let k = 0; k < SMOOTHINGS; k++) smooth = smoothed(args, smooth);
  return { light: smooth, spread };
}

/** Writes the level of every block that is paper; gives those blocks in the order they were found. */
function paperFrom({ levels, columns, rows, sure }: PaperLightArgs, light: Uint16Array): number[] {
  const order: number[] = [];
  const take = (block: number) => {
    light[block] = levels[block]! * LIGHT_STEP;
    order.push(block);
  };
  levels.forEach((level, block) => {
    if (level > 0 && level >= sure) take(block);
  });
  for (const block of order)
    for (const next of neighbours(block, columns, rows))
      if (light[next] === 0 && levels[next]! > 0 && levels[next]! >= STEADY * levels[block]!) take(next);
  return order;
}

/** Gives the blocks that are not paper the mean of what lies around them, ring by ring from the paper. */
function fillIn({ columns, rows }: PaperLightArgs, light: Uint16Array, paper: readonly number[]): void {
  let ring = [...paper];
  while (ring.length > 0) {
    const found = new Map<number, number>();
    for (const block of ring)
      for (const next of neighbours(block, columns, rows))
        if (light[next] === 0 && !found.has(next)) {
          const around = neighbours(next, columns, rows).filter((other) => light[other] !== 0);
          found.set(next, Math.round(around.reduce((sum, other) => sum + light[other]!, 0) / around.length));
        }
    for (const [block, value] of found) light[block] = value;
    ring = [...found.keys()];
  }
}

/** Means over three by three blocks, the edge repeated. */
function smoothed({ columns, rows }: PaperLightArgs, light: Uint16Array): Uint16Array {
  return Uint16Array.from(light, (_, block) => {
    const [x, y] = [block % columns, Math.floor(block / columns)];
    let sum = 0;
    for (let dy = -1; dy <= 1; dy++)
      for (let dx = -1; dx <= 1; dx++) {
        const column = Math.min(columns - 1, Math.max(0, x + dx));
        sum += light[Math.min(rows - 1, Math.max(0, y + dy)) * columns + column]!;
      }
    return Math.round(sum / 9);
  });
}

function neighbours(block: number, columns: number, rows: number): number[] {
  const x = block % columns;
  const list: number[] = [];
  if (block >= columns) list.push(block - columns);
  if (x > 0) list.push(block - 1);
  if (x + 1 < columns) list.push(block + 1);
  if (block + columns < columns * rows) list.push(block + columns);
  return list;
}
