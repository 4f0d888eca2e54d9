/**
 * Solve a square linear system in place by Gaussian elimination with partial pivoting.
 *
 * @param rows n rows of n coefficients and the right-hand side last; overwritten.
 * @returns the n unknowns, or null when the system is singular.
 */
export function solveLinear(rows: Float64Array[]): Float64Array | null {
  const n = rows.length;
  for (let column = 0; column < n; column++) {
    let best = column;
    for (let r = column + 1; r < n; r++) {
      if (Math.abs(rows[r]![column]!) > Math.abs(rows[best]![column]!)) best = r;
    }
    const pivot = rows[best]!;
    if (!(Math.abs(pivot[column]!) > 1e-300)) return null;
    rows[best] = rows[column]!;
    rows[column] = pivot;
    for (let r = column + 1; r < n; r++) {
      const row = rows[r]!;
      const factor = row[column]! / pivot[column]!;
      if (factor === 0) continue;
      for (let c = column; c <= n; c++) row[c]! -= factor * pivot[c]!;
    }
  }
  const unknowns = new Float64Array(n);
  for (let r = n - 1; r >= 0; r--) {
    const row = rows[r]!;
    let rest = row[n]!;
    for (let c = r + 1; c < n; c++) rest -= row[c]! * unknowns[c]!;
    unknowns[r] = rest / row[r]!;
  }
  return unknowns;
}
