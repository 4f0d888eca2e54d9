/** px, from the top left corner of the picture */
export type Point = readonly [number, number];

/**
 * The pixels a path passes, each a 4-neighbour of the one before, so that no diagonal line lets it through.
 * Pixels outside the picture are left out. Bresenham 1965, with single steps.
 *
 * @param path px, from pixel corners; 2 points or more
 */
export function pixelsAlong(path: readonly Point[], width: number, height: number): number[] {
  const pixels: number[] = [];
  for (let k = 1; k < path.length; k++) {
    const [fromX, fromY] = path[k - 1]!.map(Math.floor) as [number, number];
    const [toX, toY] = path[k]!.map(Math.floor) as [number, number];
    const [dx, dy] = [Math.abs(toX - fromX), Math.abs(toY - fromY)];
    const [stepX, stepY] = [Math.sign(toX - fromX), Math.sign(toY - fromY)];
    let [x, y] = [fromX, fromY];
    let error = dx - dy;
    for (let n = 0; n <= dx + dy; n++) {
      if (x >= 0 && y >= 0 && x < width && y < height) pixels.push(y * width + x);
      if (error > 0) {
        x += stepX;
        error -= 2 * dy;
      } else {
        y += stepY;
        error += 2 * dx;
      }
    }
  }
  return pixels;
}

/** A path made longer at both ends, in the direction it ends in, by `length`. */
export function prolonged(path: readonly Point[], length: number): Point[] {
  const beyond = (end: Point, before: Point): Point => {
    const [dx, dy] = [end[0] - before[0], end[1] - before[1]];
    const size = Math.sqrt(dx * dx + dy * dy);
    return size === 0 ? end : [end[0] + (dx / size) * length, end[1] + (dy / size) * length];
  };
  const last = path.length - 1;
  return [
    beyond(path[0]!, path[Math.min(last, 1)]!),
    ...path,
    beyond(path[last]!, path[Math.max(0, last - 1)]!),
  ];
}
