import type { Plane } from './plane.ts';

export interface PrintLineArgs {
  fill: Plane;
  line: Plane;
  /** How much of the fill is taken away, 0..255: 255 well inside the line, 0 at its edge and outside. */
  knockout: Plane | null;
  /** Tint the line prints at, 0..255. */
  tint: number;
  out: Plane;
}

/**
 * Prints the line onto a plate, for rows `from..to`. Knocked out: fill x (1 - k) + line x tint; without a knockout
 * the greater of fill and line x tint stands.
 */
export function printLine(args: PrintLineArgs, from: number, to: number): void {
  const { tint } = args;
  const width = args.fill.width;
  const fill = args.fill.data;
  const line = args.line.data;
  const out = args.out.data;
  const knockout = args.knockout?.data;
  const lineTint = Uint8Array.from({ length: 256 }, (_, v) => Math.round((v * tint) / 255));
  for (let i = from * width; i < to * width; i++) {
    const printed = lineTint[line[i]!]!;
    if (!knockout) {
      out[i] = Math.max(fill[i]!, printed);
      continue;
    }
    const k = knockout[i]!;
    const left = k === 0 ? fill[i]! : ((fill[i]! * (255 - k) + 127) / 255) | 0;
    const sum = left + printed;
    out[i] = Math.min(sum, 255);
  }
}
