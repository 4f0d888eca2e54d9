import { NumberList } from './number-list.ts';
import { type Point, pixelsAlong, prolonged } from './path.ts';

/** Why an edit could not be made. */
export type Refusal = 'no-region' | 'no-mark' | 'large-mark';

/** What a hand draws into the line before regions are looked for. */
export type HandLine =
  | { does: 'draw-wall'; path: readonly Point[] }
  | { does: 'cut'; path: readonly Point[] }
  | { does: 'ignore-mark'; at: Point };

export interface HandLinesArgs {
  line: Uint8Array;
  width: number;
  height: number;
  /** Line is coverage from here on. */
  threshold: number;
  edits: readonly HandLine[];
  /** How far from the place of an edit a mark may lie, px. */
  reach: number;
  /** A mark of more pixels is no speck. */
  largest: number;
  /** Receives the line with what was drawn at 255, and ignored marks at 0. */
  out: Uint8Array;
}

export interface HandLinesDrawn {
  /** Pixels of walls and cuts that are paper in the drawing. */
  walls: Uint32Array;
  /** One an edit: null where it was made. */
  refusals: (Refusal | null)[];
}

/** Draws walls and cuts into the line and takes marks out of it. */
export function handLines(args: HandLinesArgs): HandLinesDrawn {
  args.out.set(args.line);
  const walls = new NumberList();
  const draw = (pixels: readonly number[]) => {
    for (const i of pixels) {
      if (args.out[i]! < args.threshold) walls.push(i);
      args.out[i] = 255;
    }
  };
  const refusals = args.edits.map((edit): Refusal | null => {
    if (edit.does === 'ignore-mark') return takeOut(args, edit.at);
    const pixels =
      edit.does === 'cut' ? cutPixels(args, edit.path) : pixelsAlong(edit.path, args.width, args.height);
    draw(pixels);
    return pixels.length === 0 ? 'no-region' : null;
  });
  return { walls: walls.values().slice(), refusals };
}

/** The stretch of a prolonged path about its middle that runs over paper, from line to line. */
function cutPixels(args: HandLinesArgs, path: readonly Point[]): number[] {
  const { width, height, threshold, out } = args;
  const drawn = pixelsAlong(path, width, height);
  const middle = drawn[drawn.length >> 1];
  if (middle === undefined || out[middle]! >= threshold) return [];
  const pixels = pixelsAlong(prolonged(path, width + height), width, height);
  const at = pixels.indexOf(middle);
  let from = at;
  let to = at;
  while (from > 0 && out[pixels[from - 1]!]! < threshold) from--;
  while (to < pixels.length - 1 && out[pixels[to + 1]!]! < threshold) to++;
  return pixels.slice(from, to + 1);
}

function takeOut(args: HandLinesArgs, place: Point): Refusal | null {
  const { out, width, height, threshold } = args;
  const start = nearestLine(args, place);
  if (start < 0) return 'no-mark';
  const mark = [start];
  const seen = new Set(mark);
  for (let k = 0; k < mark.length; k++) {
    if (mark.length > args.largest) return 'large-mark';
    const i = mark[k]!;
    const [x, y] = [i % width, Math.floor(i / width)];
    for (let v = Math.max(0, y - 1); v <= Math.min(height - 1, y + 1); v++)
      for (let u = Math.max(0, x - 1); u <= Math.min(width - 1, x + 1); u++) {
        const near = v * width + u;
        if (out[near]! < threshold || seen.has(near)) continue;
        seen.add(near);
        mark.push(near);
      }
  }
  for (const i of mark) out[i] = 0;
  return null;
}

/** The line pixel nearest to a place, or -1 where none is within reach. */
function nearestLine({ out, width, height, threshold, reach }: HandLinesArgs, [x, y]: Point): number {
  let best = reach * reach;
  let found = -1;
  for (let v = Math.max(0, Math.floor(y - reach)); v <= Math.min(height - 1, y + reach); v++)
    for (let u = Math.max(0, Math.floor(x - reach)); u <= Math.min(width - 1, x + reach); u++) {
      const [dx, dy] = [u + 0.5 - x, v + 0.5 - y];
      if (out[v * width + u]! < threshold || dx * dx + dy * dy > best) continue;
      if (found >= 0 && dx * dx + dy * dy === best) continue;
      best = dx * dx + dy * dy;
      found = v * width + u;
    }
  return found;
}
