export interface MeasureArgs {
  /** Labels of the free pixels, 0 on line. */
  labels: Uint32Array;
  /** Squared distance of each pixel to line or frame. */
  distance2: Uint32Array;
  width: number;
  height: number;
  /** Labels run 1..count. */
  count: number;
}

/** Measures of all labels; index = label, 0 unused. Lengths and areas in px. */
export interface RegionMeasures {
  /** Free pixels. */
  area: Uint32Array;
  /** Pixel index of the place farthest from any line (the first of equals): the pole of inaccessibility. */
  anchor: Uint32Array;
  left: Uint32Array;
  top: Uint32Array;
  /** One past the last. */
  right: Uint32Array;
  bottom: Uint32Array;
  touchesFrame: Uint8Array;
}

/** Area, anchor, box and touch of the frame of every region, from its free pixels. */
export function measureRegions(args: MeasureArgs): RegionMeasures {
  const { labels, distance2, width, height } = args;
  const size = args.count + 1;
  const area = new Uint32Array(size);
  const anchor = new Uint32Array(size);
  const deepest = new Uint32Array(size);
  const left = new Uint32Array(size).fill(width);
  const right = new Uint32Array(size);
  const top = new Uint32Array(size).fill(height);
  const bottom = new Uint32Array(size);
  const touchesFrame = new Uint8Array(size);
  for (let y = 0; y < height; y++) {
    const atFrame = y === 0 || y === height - 1;
    for (let x = 0, i = y * width; x < width; x++, i++) {
      const label = labels[i]!;
      if (label === 0) continue;
      area[label]!++;
      if (distance2[i]! > deepest[label]!) {
        deepest[label] = distance2[i]!;
        anchor[label] = i;
      }
      if (x < left[label]!) left[label] = x;
      if (x >= right[label]!) right[label] = x + 1;
      if (y < top[label]!) top[label] = y;
      bottom[label] = y + 1;
      if (atFrame || x === 0 || x === width - 1) touchesFrame[label] = 1;
    }
  }
  return { area, anchor, left, top, right, bottom, touchesFrame };
}
