import { components } from '../../../workers/kernels/components.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';

/** The pieces of line (8-connected) and of paper (4-connected) of a picture. */
export interface Pieces {
  line: Uint32Array;
  paper: Uint32Array;
  lines: number;
  papers: number;
}

export function piecesOf({ data, width, height }: Plane): Pieces {
  const line = new Uint32Array(data.length);
  const paper = new Uint32Array(data.length);
  const lines = components({ data, width, height, from: 128, to: 255, neighbours: 8, labels: line });
  const papers = components({ data, width, height, from: 0, to: 127, neighbours: 4, labels: paper });
  return { line, paper, lines, papers };
}

/** Which piece of line borders on which piece of paper side by side, as `line-paper`. */
export function bordersOf({ width, height }: Plane, { line, paper }: Pieces): Set<string> {
  const found = new Set<string>();
  const look = (a: number, b: number) => {
    if (line[a] !== 0 && paper[b] !== 0) found.add(`${line[a]}-${paper[b]}`);
    if (paper[a] !== 0 && line[b] !== 0) found.add(`${line[b]}-${paper[a]}`);
  };
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      if (x + 1 < width) look(y * width + x, y * width + x + 1);
      if (y + 1 < height) look(y * width + x, (y + 1) * width + x);
    }
  return found;
}

/** Which piece before shares pixels with which after, as `before-after`. */
export function overlaps(before: Uint32Array, after: Uint32Array): Set<string> {
  const found = new Set<string>();
  before.forEach((label, i) => {
    if (label !== 0 && after[i] !== 0) found.add(`${label}-${after[i]}`);
  });
  return found;
}
