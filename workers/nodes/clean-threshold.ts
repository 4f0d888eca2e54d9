import type { SettingsOf } from '../../src/graph/node-kind.ts';
import type { cleanLine } from '../../src/nodes/clean-line.ts';
import type { Cleaning } from '../engine/cleaning.ts';
import type { Tools } from '../engine/evaluation.ts';
import { otsu, partingAt } from '../kernels/otsu.ts';
import { mmToPx, type Plane } from '../kernels/plane.ts';
import { softThreshold } from '../kernels/tone-table.ts';

type Settings = SettingsOf<typeof cleanLine>;

/** Share of pixels that are wholly paper or wholly line in clean artwork. */
const CLEAN_SHARE = 0.9;
/** Half the coverage there is. */
const HALF = 127;
/**
 * Otsu's level holds where it lies so many spreads of the paper's grain above paper. Measured on generated scans: 1.0 to
 * 1.2 where there is so little line, or so faint, that it parts grain from grain; 2.6 and more where it is right.
 */
const CLEAR_OF_GRAIN = 2;
/** It holds as well where it parts so much of the variance; grain parted from grain is 0.64, if normal. */
const CLEAR = 0.8;
/** A scan keeps this share of the way from the threshold to paper, or to solid line, as its soft edge. */
const EDGE_SHARE = 0.5;
/** Line is at least so many spreads of the paper's grain darker than paper, within these bounds. */
const GRAINS = 4.5;
const LEAST_DARKER = 0.15;
const MOST_DARKER = 0.5;

/** Whether nearly all of a drawing is wholly paper or wholly line: soft edges are then true coverage. */
export function isClean(counts: Uint32Array): boolean {
  let pixels = 0;
  let wholly = 0;
  counts.forEach((count, value) => {
    pixels += count;
    if (value <= 2 || value >= 253) wholly += count;
  });
  return wholly >= CLEAN_SHARE * pixels && counts[255]! > 0;
}

/** Parts line from paper by the rule that is wanted: what is line comes out at 128 or more. */
export async function parted(
  line: Plane,
  clean: boolean,
  settings: Settings,
  ppi: number,
  tools: Tools,
): Promise<{ line: Plane; threshold: Cleaning['threshold'] }> {
  const counts = await tools.whole('histogram', { data: line.data });
  const best = otsu(counts);
  const clear = partingAt(counts, best).clarity >= CLEAR || best > CLEAR_OF_GRAIN * paperGrain(counts, 255);
  const grain = paperGrain(counts, clear ? best : 255);
  const how = ruleFor(settings.threshold, clean, clear);
  const softness = settings.softness / 100;
  const out = tools.plane(line.width, line.height);
  if (how === 'local') {
    const { above } = partingAt(counts, best);
    const k = settings.darkerPercent === null ? darkerThan(grain) : settings.darkerPercent / 100;
    const reach = Math.max(1, Math.round(mmToPx(settings.aroundMm, ppi) / 2));
    const half = 255 * k * EDGE_SHARE * softness;
    const sure = clear ? Math.round((best + above) / 2) : 256;
    await tools.bands('sauvola', { line, out, reach, k, half, sure }, line.height);
    return { line: out, threshold: { how, levelPercent: 100 * k } };
  }
  const level =
    how === 'half' ? HALF : how === 'set' ? Math.min(254, Math.round((settings.level * 255) / 100)) : best;
  const { below, above } = partingAt(counts, level);
  const room = clean ? undefined : EDGE_SHARE * Math.min(level - below, above - level);
  const table = softThreshold(level, softness, room);
  await tools.bands('toneTable', { from: line, to: out, table }, line.height);
  return { line: out, threshold: { how, levelPercent: (100 * level) / 255 } };
}

function ruleFor(
  wanted: Settings['threshold'],
  clean: boolean,
  clear: boolean,
): Cleaning['threshold']['how'] {
  if (wanted !== 'auto') return wanted;
  if (clean) return 'half';
  return clear ? 'whole-drawing' : 'local';
}

/** How much darker than the paper around it line is at least, so that its grain is none: a share of white. */
function darkerThan(grain: number): number {
  return Math.min(MOST_DARKER, Math.max(LEAST_DARKER, (GRAINS * grain) / 255));
}

/**
 * Spread of the grain of the paper, levels: from the lightest fifth of the sheet to its middle, as if normal.
 *
 * @param most coverage up to which a pixel is paper
 */
function paperGrain(counts: Uint32Array, most: number): number {
  const paper = counts.subarray(0, most + 1);
  const pixels = paper.reduce((sum, count) => sum + count, 0);
  const upTo = (share: number) => {
    let sum = 0;
    return paper.findIndex((count) => {
      sum += count;
      return sum >= share * pixels;
    });
  };
  return (upTo(0.5) - upTo(0.2)) / NORMAL_20_TO_50;
}

/** From the lowest fifth of a normal distribution to its middle, in spreads. */
const NORMAL_20_TO_50 = 0.8416;
