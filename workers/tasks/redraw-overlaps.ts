import type { MatchInput, Overlap, Placed, sureMatches } from '../../src/graph/match-regions.ts';
import type { Tools } from '../engine/evaluation.ts';
import type { RegionsValue } from '../engine/values.ts';
import type { Affine } from '../kernels/offset.ts';
import { mmToPx } from '../kernels/plane.ts';

/** So many sure neighbours tell where a region that is not sure has gone. */
const NEIGHBOURS = 6;
/** Only matches as sure as this tell how far things moved: pieces of a region lie aside of its middle. */
const TELLING = 0.75;

/**
 * Overlaps of new regions with old ones. Regions whose match is not sure are moved by what their surest neighbours
 * moved, and counted once more. Areas in pixels of the old drawing.
 *
 * @param share pixels of the new drawing to one of the old
 */
export async function overlapsOf(
  before: RegionsValue,
  after: RegionsValue,
  place: Affine,
  share: number,
  tools: Tools,
  sure: typeof sureMatches,
): Promise<MatchInput> {
  const count = after.table.length;
  const still = () => new Float64Array(count + 1);
  const all = new Uint8Array(count + 1).fill(1);
  const planes = { before: before.labels, after: after.labels, place };
  const first = await tools.whole('countOverlaps', {
    ...planes,
    shiftX: still(),
    shiftY: still(),
    wanted: all,
  });
  const olds = await placedOf(before, tools);
  const news = (await placedOf(after, tools)).map(({ area, x, y }) => {
    const [u, v] = [x - 0.5, y - 0.5];
    return {
      area: area / (share * share),
      x: place.xx * u + place.xy * v + place.x0 + 0.5,
      y: place.yx * u + place.yy * v + place.y0 + 0.5,
    };
  });
  const listed = (found: typeof first) =>
    Array.from(found.count, (pixels, i) => ({
      after: found.after[i]! - 1,
      before: found.before[i]! - 1,
      area: pixels / (share * share),
    })).filter((each) => each.before >= 0);
  const rough = { before: olds, after: news, overlaps: listed(first) };
  const sures = sure(rough);
  const isSure = new Set(sures.map((each) => each.after));
  const [shiftX, shiftY] = [still(), still()];
  const wanted = new Uint8Array(count + 1);
  news.forEach((region, i) => {
    if (isSure.has(i)) return;
    wanted[i + 1] = 1;
    const [x, y] = movedBy(
      region,
      sures
        .filter(({ share: sureness }) => sureness > TELLING)
        .map((each) => [news[each.after]!, olds[each.before]!] as const),
    );
    shiftX[i + 1] = x;
    shiftY[i + 1] = y;
  });
  if (isSure.size === count || isSure.size === 0) return rough;
  const second = await tools.whole('countOverlaps', { ...planes, shiftX, shiftY, wanted });
  const again = listed(second);
  const [unmoved, moved] = [bestBy(rough.overlaps, count), bestBy(again, count)];
  const better = (label: number) => moved[label]! > unmoved[label]!;
  const overlaps = [
    ...rough.overlaps.filter((each) => !better(each.after)),
    ...again.filter((each) => better(each.after)),
  ];
  const shifted = news.map((region, i) => ({
    ...region,
    x: region.x + (better(i) ? shiftX[i + 1]! : 0),
    y: region.y + (better(i) ? shiftY[i + 1]! : 0),
  }));
  return { before: olds, after: shifted, overlaps };
}

/** The most of each new region that lies on one old one. */
function bestBy(overlaps: readonly Overlap[], count: number): Float64Array {
  const best = new Float64Array(count);
  for (const { after, area } of overlaps) best[after] = Math.max(best[after]!, area);
  return best;
}

/** Regions with the line they reach under: the middle of their box and their pixels. */
async function placedOf({ labels, table, ppi }: RegionsValue, tools: Tools): Promise<Placed[]> {
  const pixels = await tools.whole('countLabels', { labels: labels.data, count: table.length });
  const px = mmToPx(1, ppi);
  return table.map(({ label, boxMm: [left, top, right, bottom] }) => ({
    area: pixels[label]!,
    x: ((left + right) / 2) * px,
    y: ((top + bottom) / 2) * px,
  }));
}

/** By how much the sure matches about a region moved from new to old, the nearer the weightier. */
function movedBy({ x, y }: Placed, pairs: readonly (readonly [Placed, Placed])[]): [number, number] {
  const near = pairs
    .map(([from, to]) => ({ from, to, away: (from.x - x) * (from.x - x) + (from.y - y) * (from.y - y) }))
    .sort((a, b) => a.away - b.away)
    .slice(0, NEIGHBOURS);
  let [sumX, sumY, weights] = [0, 0, 0];
  for (const { from, to, away } of near) {
    const weight = 1 / (away + Math.sqrt(from.area) + 1);
    sumX += weight * (to.x - from.x);
    sumY += weight * (to.y - from.y);
    weights += weight;
  }
  return weights === 0 ? [0, 0] : [sumX / weights, sumY / weights];
}
