import { canonicalJson } from '../../src/graph/keys.ts';
import { pressFaults as kind } from '../../src/nodes/press-faults.ts';
import { ALONG_FEED } from '../../src/nodes/register-offset.ts';
import { evaluation, type Tools } from '../engine/evaluation.ts';
import type { PlatesValue, PlateValue } from '../engine/values.ts';
import { latticeOf, mix, octavesOf, seedOfSheet } from '../kernels/lattice.ts';
import { mmToPx, type Plane, pxToMm } from '../kernels/plane.ts';
import { rimTable } from '../kernels/press-edges.ts';
import type { PressMapArgs } from '../kernels/press-map.ts';
import type { PressPrintArgs } from '../kernels/press-print.ts';
import { inkAbout } from './edge-of-ink.ts';
import { keptWithin } from './kept-within.ts';
import { amountOf, type FaultSettings, repeatsOf, spotsOf } from './press-marks.ts';

export const pressFaults = evaluation(kind, async ({ settings, inputs, tools }) => {
  const { plates, area } = inputs;
  const limited = async (before: Plane, after: Plane) =>
    area ? keptWithin(before, after, area.mask, tools) : after;
  const printed = plates.plates.map(async (plate) => {
    const { coverage, order } = plate;
    const film = (settings.densityPercentOf[plate.id] ?? settings.densityPercent) / 100;
    const map = await mapOf(settings, order, plates, tools);
    const repeats = repeatsOf(settings, order, plates);
    const spots = spotsOf(settings, order, plates.mm);
    const edged = await edgesOf(settings, plate, plates, tools);
    if (!map && film === 1 && repeats.length + spots.length === 0)
      return edged === coverage ? plate : { ...plate, coverage: await limited(coverage, edged) };
    const out = tools.plane(coverage.width, coverage.height);
    const pixelMm = pxToMm(1, plates.ppi);
    await tools.bands('pressPrint', { plate: edged, out, pixelMm, map, film, repeats, spots }, out.height);
    if (edged !== coverage) tools.free(edged.data);
    return { ...plate, coverage: await limited(coverage, out) };
  });
  return { plates: { ...plates, plates: await Promise.all(printed) } };
});

/** Most of its ink that a place loses to each fault. */
const TRACKS = 0.5;
const STARVATION = 0.9;
const STREAKS = 0.5;
const PRESSURE = 0.4;
/** Cells of the map: fine enough for streaks, and not too many on a large sheet. */
const CELL_MM = 0.5;
const MOST_CELLS = 1200;

/** The slow faults do not depend on the scale: they are worked out in mm. Null where there are none. */
async function mapOf(
  settings: FaultSettings,
  order: number,
  { mm: [widthMm, heightMm] }: PlatesValue,
  tools: Tools,
): Promise<PressPrintArgs['map']> {
  const faults = {
    tracks: { take: amountOf('tracks', settings) * TRACKS, mm: settings.tracksMm },
    starvation: { take: amountOf('starvation', settings) * STARVATION, mm: settings.starvationMm },
    streaks: { take: amountOf('streaks', settings) * STREAKS, mm: settings.streaksMm },
    pressure: { take: amountOf('pressure', settings) * PRESSURE, mm: settings.pressureMm },
  };
  if (Object.values(faults).every(({ take }) => take === 0)) return null;
  const cellMm = Math.max(CELL_MM, Math.max(widthMm, heightMm) / MOST_CELLS);
  const width = Math.ceil(widthMm / cellMm);
  const height = Math.ceil(heightMm / cellMm);
  const seed = mix(order, settings.seed);
  const along = ALONG_FEED[settings.feedEdge];
  const data = await mapData({ width, height, cellMm, along, ...faults, seed }, tools);
  return { data, width, height, cellMm };
}

/** Maps of the last plates: they are the same at every scale and for every sheet. */
const maps = new Map<string, Promise<Float32Array>>();
const MOST_MAPS = 12;

function mapData(args: PressMapArgs, tools: Tools): Promise<Float32Array> {
  const key = canonicalJson(args);
  const known = maps.get(key);
  if (known) return known;
  if (maps.size >= MOST_MAPS) maps.delete(maps.keys().next().value!);
  const made = tools.whole('pressMap', args);
  maps.set(key, made);
  made.catch(() => maps.delete(key));
  return made;
}

/** Most that a rim's inner line loses, and how far out of its reach flooding goes where it is strongest. */
const SQUEEZE = 0.4;
const FLOODING = 1.2;
/** Only a full film of ink floods. */
const LEAST_FLOODING = 200;
/** Patches of flooding, of its reach. */
const PATCHES = 20;

/** The plate with its rims and swollen edges; the plate itself where the press has neither. */
async function edgesOf(
  settings: FaultSettings,
  { coverage, order }: PlateValue,
  { ppi }: PlatesValue,
  tools: Tools,
): Promise<Plane> {
  const take = amountOf('squeeze', settings) * SQUEEZE;
  const give = amountOf('flooding', settings) * FLOODING;
  if (take === 0 && give === 0) return coverage;
  const about = (mm: number, least?: number) => inkAbout(coverage, mmToPx(mm, ppi), tools, least);
  const squeeze = take === 0 ? null : { share: await about(3 * settings.squeezeMm), rims: rimTable(take) };
  const flooding = give === 0 ? null : { share: await about(settings.floodingMm, LEAST_FLOODING), give };
  const out = tools.plane(coverage.width, coverage.height);
  const seed = mix(106, seedOfSheet(mix(order, settings.seed), settings.sheet));
  const pixelMm = pxToMm(1, ppi);
  const octaves = octavesOf(PATCHES * settings.floodingMm, 3, seed, pixelMm);
  const lattice = latticeOf(settings.seed);
  await tools.bands(
    'pressEdges',
    { plate: coverage, out, squeeze, flooding, lattice, octaves, pixelMm },
    out.height,
  );
  if (squeeze) tools.free(squeeze.share.data);
  if (flooding) tools.free(flooding.share.data);
  return out;
}
