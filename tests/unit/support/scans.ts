import type { Plane } from '../../../workers/kernels/plane.ts';
import { flatPlane } from './pictures.ts';
import { randomOf } from './random.ts';

/** What a scanner, a hand and a sheet of paper do to a drawing. */
export interface Scan {
  /** Brightness of the sheet and of solid line under full light, 0..255. */
  paper: number;
  ink: number;
  /** Share of the light lost from the left edge to the right, 0..1. */
  slope: number;
  /** Share of the light lost in the corners, 0..1. */
  vignette: number;
  /** Radius of the blur, px. */
  blur: number;
  /** Spread of the sensor's noise, levels. */
  noise: number;
  /** Spread of the paper's grain, levels, and the size of a grain, px. */
  grain: number;
  grainPx: number;
  /** Dust specks in a megapixel, each a dark disc of up to `dustPx` across. */
  dust: number;
  dustPx: number;
  /** White spots in a megapixel of line, each up to `dropoutPx` across. */
  dropouts: number;
  dropoutPx: number;
  /** How far the edge of a line strays, px. */
  ragged: number;
  /** Turned clockwise about the middle, degrees. */
  turnDeg: number;
}

/** A drawing as white as its paper: every fault away. */
export const FLAWLESS: Scan = {
  paper: 255,
  ink: 0,
  slope: 0,
  vignette: 0,
  blur: 0,
  noise: 0,
  grain: 0,
  grainPx: 3,
  dust: 0,
  dustPx: 3,
  dropouts: 0,
  dropoutPx: 3,
  ragged: 0,
  turnDeg: 0,
};

/** Three severities, for drawings of about 300 to 600 ppi. */
export const SCANS = {
  good: { ...FLAWLESS, paper: 244, ink: 28, slope: 0.04, blur: 1, noise: 3, grain: 2, dust: 20 },
  fair: {
    ...FLAWLESS,
    paper: 232,
    ink: 48,
    slope: 0.22,
    vignette: 0.12,
    blur: 1,
    noise: 6,
    grain: 4,
    dust: 80,
    dropouts: 300,
    ragged: 0.5,
  },
  poor: {
    ...FLAWLESS,
    paper: 215,
    ink: 85,
    slope: 0.42,
    vignette: 0.25,
    blur: 1,
    noise: 10,
    grain: 6,
    dust: 250,
    dropouts: 800,
    ragged: 0.8,
  },
} as const satisfies Record<string, Scan>;

/** A scan of `line` (0 paper .. 255 line) as line coverage, the same for the same seed. */
export function scanOf(line: Plane, scan: Scan, seed: number): Plane {
  const random = randomOf(seed);
  const moved = scan.turnDeg === 0 && scan.ragged === 0 ? copyOf(line) : strayed(line, scan, random);
  spots(moved, 0, scan.dropouts, scan.dropoutPx, random);
  spots(moved, 255, scan.dust, scan.dustPx, random);
  return lit(scan.blur > 0 ? blurred(moved, scan.blur) : moved, scan, random);
}

function copyOf(line: Plane): Plane {
  const to = flatPlane(line.width, line.height);
  to.data.set(line.data);
  return to;
}

/** The drawing turned, and its edges moved to and fro: bilinear, paper outside. */
function strayed(line: Plane, { turnDeg, ragged }: Scan, random: () => number): Plane {
  const { width, height, data } = line;
  const out = flatPlane(width, height);
  const turn = (turnDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const [midX, midY] = [(width - 1) / 2, (height - 1) / 2];
  const strayX = wandering(width, 4, random);
  const strayY = wandering(width, 4, random);
  const at = (x: number, y: number) =>
    x < 0 || y < 0 || x >= width || y >= height ? 0 : data[y * width + x]!;
  for (let y = 0; y < height; y++) {
    strayX.toRow(y);
    strayY.toRow(y);
    for (let x = 0; x < width; x++) {
      const [dx, dy] = [x - midX, y - midY];
      const sx = cos * dx + sin * dy + midX + (strayX.row[x]! * 2 - 1) * ragged * 2;
      const sy = cos * dy - sin * dx + midY + (strayY.row[x]! * 2 - 1) * ragged * 2;
      const [ix, iy] = [Math.floor(sx), Math.floor(sy)];
      const [fx, fy] = [sx - ix, sy - iy];
      const top = at(ix, iy) * (1 - fx) + at(ix + 1, iy) * fx;
      const bottom = at(ix, iy + 1) * (1 - fx) + at(ix + 1, iy + 1) * fx;
      out.data[y * width + x] = Math.round(top * (1 - fy) + bottom * fy);
    }
  }
  return out;
}

/** Smooth noise 0..1 row by row: random values on a lattice of `cell` px, straight in between. */
function wandering(width: number, cell: number, random: () => number) {
  const points = Math.ceil(width / cell) + 2;
  const draw = () => Float32Array.from({ length: points }, random);
  let [above, below] = [draw(), draw()];
  const row = new Float32Array(width);
  const toRow = (y: number) => {
    if (y > 0 && y % cell === 0) [above, below] = [below, draw()];
    const fy = (y % cell) / cell;
    for (let x = 0; x < width; x++) {
      const k = Math.floor(x / cell);
      const fx = (x % cell) / cell;
      const top = above[k]! * (1 - fx) + above[k + 1]! * fx;
      const bottom = below[k]! * (1 - fx) + below[k + 1]! * fx;
      row[x] = top * (1 - fy) + bottom * fy;
    }
  };
  return { row, toRow };
}

/** Discs of one value, `perMegapixel` of them, anywhere. */
function spots(plane: Plane, value: number, perMegapixel: number, acrossPx: number, random: () => number) {
  const { width, height, data } = plane;
  const count = Math.round((perMegapixel * width * height) / 1e6);
  for (let n = 0; n < count; n++) {
    const [x, y] = [random() * width, random() * height];
    const radius = (acrossPx * (0.5 + 0.5 * random())) / 2;
    for (let py = Math.ceil(y - radius); py <= y + radius; py++)
      for (let px = Math.ceil(x - radius); px <= x + radius; px++)
        if (px >= 0 && py >= 0 && px < width && py < height && (px - x) ** 2 + (py - y) ** 2 <= radius ** 2)
          data[py * width + px] = value;
  }
}

/** Mean over a box of `2 radius + 1` px each way, the edge repeated. */
function blurred(plane: Plane, radius: number): Plane {
  const { width, height } = plane;
  const once = (from: Plane, step: number, size: number) => {
    const to = flatPlane(width, height);
    for (let i = 0; i < to.data.length; i++) {
      const at = step === 1 ? i % width : Math.floor(i / width);
      let sum = 0;
      for (let k = -radius; k <= radius; k++)
        sum += from.data[i + (Math.min(size - 1, Math.max(0, at + k)) - at) * step]!;
      to.data[i] = Math.round(sum / (2 * radius + 1));
    }
    return to;
  };
  return once(once(plane, 1, width), width, height);
}

const DRAWS = 1 << 14;

/** The plane under the scanner's lamp: paper and ink, light, grain and noise; back as coverage. */
function lit(plane: Plane, scan: Scan, random: () => number): Plane {
  const { width, height, data } = plane;
  const out = flatPlane(width, height);
  const normal = Float32Array.from({ length: DRAWS }, () => {
    let sum = -6;
    for (let k = 0; k < 12; k++) sum += random();
    return sum * scan.noise;
  });
  const grain = wandering(width, scan.grainPx, random);
  const [midX, midY] = [width / 2, height / 2];
  const corner = midX ** 2 + midY ** 2;
  let state = Math.floor(random() * 0xffffffff) | 1;
  for (let y = 0; y < height; y++) {
    grain.toRow(y);
    for (let x = 0, i = y * width; x < width; x++, i++) {
      state ^= state << 13;
      state ^= state >>> 17;
      state ^= state << 5;
      const away = ((x - midX) ** 2 + (y - midY) ** 2) / corner;
      const light = (1 - (scan.slope * x) / width) * (1 - scan.vignette * away);
      const sheet = scan.paper + (grain.row[x]! - 0.5) * 4 * scan.grain;
      const line = data[i]! / 255;
      const bright = (sheet * (1 - line) + scan.ink * line) * light + normal[state & (DRAWS - 1)]!;
      out.data[i] = 255 - Math.min(255, Math.max(0, Math.round(bright)));
    }
  }
  return out;
}
