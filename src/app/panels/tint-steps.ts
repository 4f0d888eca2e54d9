/** Tints that a press holds, in %: paler ones vanish, darker ones close up. */
export const STOPS: readonly number[] = [0, ...Array.from({ length: 15 }, (_, i) => 15 + 5 * i), 100];

/** The place of the stop nearest to a tint; the lower of two as near. */
export function nearestStop(tint: number): number {
  let best = 0;
  STOPS.forEach((stop, i) => {
    if (Math.abs(stop - tint) < Math.abs(STOPS[best]! - tint)) best = i;
  });
  return best;
}

/** The next stop above or below a tint; the tint itself at the end. */
export function nextStop(tint: number, way: 1 | -1): number {
  const beyond = way > 0 ? STOPS.find((stop) => stop > tint) : STOPS.findLast((stop) => stop < tint);
  return beyond ?? tint;
}

/** A tint as typed, with a point or a comma, held within 0..100 and to a tenth; null when it is no number. */
export function tintOf(text: string): number | null {
  const plain = text.replace('%', '').replace(',', '.').trim();
  const tint = Number(plain);
  if (plain === '' || Number.isNaN(tint)) return null;
  return Math.round(Math.min(100, Math.max(0, tint)) * 10) / 10;
}
