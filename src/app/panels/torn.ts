/** Corners along the upper and lower edge of a torn piece, and down each side. */
const ACROSS = 9;
const DOWN = 6;

/** A reproducible number 0..1 for a piece and a place on its edge. */
function chance(piece: number, place: number): number {
  let h = Math.imul(piece + 1, 0x9e3779b1) ^ Math.imul(place + 1, 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  h = Math.imul(h ^ (h >>> 12), 0x297a2d39);
  return ((h ^ (h >>> 15)) >>> 0) / 0x100000000;
}

/**
 * The outline of a piece of paper torn by hand, as a CSS clip path: every corner lies a little off, the edges run
 * from one to the next with nicks. No two pieces are alike.
 *
 * @param piece its number; the same number gives the same outline
 * @param depth how far the tear wanders inward, px
 */
export function tornOutline(piece: number, depth: number): string {
  let place = 0;
  const next = () => chance(piece, place++);
  const corners = Array.from({ length: 4 }, () => ({ x: next(), y: next() }));
  const points = corners.flatMap((from, side) => edge(side, from, corners[(side + 1) % 4]!));
  return `polygon(${points.join(', ')})`;

  /** An edge up to its end, clockwise from the upper one. */
  function edge(side: number, from: { x: number; y: number }, to: { x: number; y: number }): string[] {
    const lies = side % 2 === 0;
    const steps = lies ? ACROSS : DOWN;
    const [start, end, first, last] = lies ? [from.y, to.y, from.x, to.x] : [from.x, to.x, from.y, to.y];
    return Array.from({ length: steps }, (_, i) => {
      const share = i === 0 ? 0 : (i + 0.6 * (next() - 0.5)) / steps;
      const nick = i === 0 ? 0 : 0.9 * (next() - 0.45);
      const inward = depth * Math.max(0, (1 - share) * start + share * end + nick) * 0.7;
      const aside = depth * ((1 - share) * first - share * last) * 0.7;
      const along = `calc(${percent(side < 2 ? share : 1 - share)} + ${px(side < 2 ? aside : -aside)})`;
      const across = side === 0 || side === 3 ? px(inward) : `calc(100% - ${px(inward)})`;
      return lies ? `${along} ${across}` : `${across} ${along}`;
    });
  }
}

const percent = (share: number) => `${(100 * share).toFixed(1)}%`;
const px = (length: number) => `${length.toFixed(2)}px`;
