import { unzlibSync } from 'fflate';

/** Bytes of a Flate stream whose rows PNG's predictors None or Up wrote. */
export function predictedRows(stream: Uint8Array, rowBytes: number): Uint8Array {
  const coded = unzlibSync(stream);
  const rows = coded.length / (rowBytes + 1);
  const bytes = new Uint8Array(rows * rowBytes);
  for (let y = 0; y < rows; y++) {
    const predictor = coded[y * (rowBytes + 1)]!;
    if (predictor !== 0 && predictor !== 2) throw new Error(`row ${y} has predictor ${predictor}`);
    for (let x = 0; x < rowBytes; x++) {
      const above = predictor === 2 && y > 0 ? bytes[(y - 1) * rowBytes + x]! : 0;
      bytes[y * rowBytes + x] = coded[y * (rowBytes + 1) + 1 + x]! + above;
    }
  }
  return bytes;
}
