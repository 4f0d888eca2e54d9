export interface RelabelArgs {
  from: Uint32Array;
  to: Uint32Array;
  width: number;
  /** New label by old label. */
  table: Uint32Array;
}

/** Renames the labels of rows `from..to`. */
export function relabel(args: RelabelArgs, from: number, to: number): void {
  const { table } = args;
  const source = args.from;
  const target = args.to;
  for (let i = from * args.width; i < to * args.width; i++) target[i] = table[source[i]!]!;
}
