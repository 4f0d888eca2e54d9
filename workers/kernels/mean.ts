export interface MeanArgs {
  data: Uint8Array;
}

/** Mean of a plane, 0..255. */
export function mean(args: MeanArgs): number {
  const { data } = args;
  let sum = 0;
  for (let i = 0; i < data.length; i++) sum += data[i]!;
  return data.length === 0 ? 0 : sum / data.length;
}
