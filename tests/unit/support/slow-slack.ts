/**
 * Where a drift of one plate first shows, by shifting the plate as a whole to every place within reach, the nearest
 * shifts first: the squared shift at every pixel on an edge of a set of plates, 0 where what first changes is no fault.
 */
export function slowSlack(
  sets: ArrayLike<number>,
  width: number,
  height: number,
  plate: number,
  reach: number,
): number[] {
  const bit = 1 << plate;
  const setAt = (x: number, y: number) =>
    x < 0 || y < 0 || x >= width || y >= height ? null : sets[y * width + x]!;
  const shifts: { dx: number; dy: number; d2: number }[] = [];
  for (let dy = -reach; dy <= reach; dy++)
    for (let dx = -reach; dx <= reach; dx++) {
      const d2 = dx * dx + dy * dy;
      if (d2 > 0 && d2 <= reach * reach) shifts.push({ dx, dy, d2 });
    }
  shifts.sort((a, b) => a.d2 - b.d2);
  const changedAt = new Array<number>(width * height).fill(0);
  const faults = new Array<number>(width * height).fill(0);
  for (const { dx, dy, d2 } of shifts)
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) {
        const i = y * width + x;
        const came = setAt(x + dx, y + dy);
        if (came === null || (changedAt[i] !== 0 && changedAt[i] !== d2)) continue;
        const now = (sets[i]! & ~bit) | (came & bit);
        if (now === sets[i]) continue;
        changedAt[i] = d2;
        const steps = Math.max(Math.abs(dx), Math.abs(dy));
        const way = Array.from({ length: steps + 1 }, (_, k) =>
          setAt(x + Math.round((dx * k) / steps), y + Math.round((dy * k) / steps)),
        );
        if (!way.includes(now)) faults[i] = d2;
      }
  const onEdge = (x: number, y: number) =>
    [
      [x - 1, y],
      [x + 1, y],
      [x, y - 1],
      [x, y + 1],
    ].some(([u, v]) => {
      const other = setAt(u!, v!);
      return other !== null && other !== sets[y * width + x];
    });
  return faults.map((d2, i) => (onEdge(i % width, Math.floor(i / width)) ? d2 : 0));
}
