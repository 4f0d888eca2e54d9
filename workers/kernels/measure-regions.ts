export interface MeasureArgs {
  /** Labels of the free pixels, 0 on line. */
  labels: Uint32Array;
  /** Which region a label belongs to, 0 for 0. */
  names: Uint32Array;
  /** Squared distance of each pixel to line or frame. */
  distance2: Uint32Array;
  width: number;
  height: number;
  /** Regions run 1..count. */
  count: number;
}

/** Measures of all regions; index = region, 0 unused. Lengths and areas in px. */
export interface RegionMeasures {
  /** Free pixels. */
  area: Uint32Array;
  /** Pixel index of the place farthest from any line (the first of equals): the pole of inaccessibility. */
  anchor: Uint32Array;
  /** Squared distance of the anchor to line or frame, px2. */
  deepest: Uint32Array;
  left: Uint32Array;
  top: Uint32Array;
  /** One past the last. */
  right: Uint32Array;
  bottom: Uint32Array;
  /** Length of the longest unbroken run along one side of the frame, px; 0 where the region does not touch it. */
  frameRun: Uint32Array;
}

/** Area, anchor, box and touch of the frame of every region, from its free pixels. */
export function measureRegions(args: MeasureArgs): RegionMeasures {
  const { labels, names, distance2, width, height } = args;
  const size = args.count + 1;
  const area = new Uint32Array(size);
  const anchor = new Uint32Array(size);
  const deepest = new Uint32Array(size);
  const left = new Uint32Array(size).fill(width);
  const right = new Uint32Array(size);
  const top = new Uint32Array(size).fill(height);
  const bottom = new Uint32Array(size);
  for (let y = 0; y < height; y++) {
    const end = (y + 1) * width;
    for (let i = y * width; i < end; ) {
      const start = i;
      const own = labels[i]!;
      const region = names[own]!;
      let best = deepest[region]!;
      for (; i < end && labels[i] === own; i++) {
        if (distance2[i]! <= best) continue;
        best = distance2[i]!;
        anchor[region] = i;
      }
      if (region === 0) continue;
      deepest[region] = best;
      area[region]! += i - start;
      left[region] = Math.min(left[region]!, start - y * width);
      right[region] = Math.max(right[region]!, i - y * width);
      top[region] = Math.min(top[region]!, y);
      bottom[region] = y + 1;
    }
  }
  return { area, anchor, deepest, left, top, right, bottom, frameRun: frameRuns(args) };
}

function frameRuns({ labels, names, width, height, count }: MeasureArgs): Uint32Array {
  const longest = new Uint32Array(count + 1);
  const side = (start: number, step: number, length: number) => {
    let run = 0;
    for (let k = 0; k < length; k++) {
      const label = names[labels[start + k * step]!]!;
      const before = k === 0 ? 0 : names[labels[start + (k - 1) * step]!]!;
      run = label === before ? run + 1 : 1;
      if (label !== 0 && run > longest[label]!) longest[label] = run;
    }
  };
  side(0, 1, width);
  side((height - 1) * width, 1, width);
  side(0, width, height);
  side(width - 1, width, height);
  return longest;
}
