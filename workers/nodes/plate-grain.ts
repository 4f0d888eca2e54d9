import type { SettingsOf } from '../../src/graph/node-kind.ts';
import { plateGrain as kind } from '../../src/nodes/plate-grain.ts';
import { evaluation, type Tools } from '../engine/evaluation.ts';
import type { PlatesValue, PlateValue } from '../engine/values.ts';
import { type GrainField, levelShares, mottleField, tileField } from '../kernels/grain-field.ts';
import { type GrainTable, gatherTable, mottleTable } from '../kernels/grain-table.ts';
import { SPREAD, type TileKind } from '../kernels/grain-tile.ts';
import { latticeOf, mix } from '../kernels/lattice.ts';
import { mmToPx, pxToMm } from '../kernels/plane.ts';
import { seenOf } from '../kernels/seen.ts';
import { edgeOfInk } from './edge-of-ink.ts';
import { keptWithin } from './kept-within.ts';

type Settings = SettingsOf<typeof kind>;

export const plateGrain = evaluation(kind, async ({ settings, inputs, tools }) => {
  const { plates, area } = inputs;
  const lattice = latticeOf(settings.seed);
  const tile = settings.pattern === 'mottle' ? undefined : await tileOf(settings.pattern, tools);
  const grained = plates.plates.map(async (plate) => {
    const { height, width } = plate.coverage;
    const field = fieldOf(settings, plate.order, plates.ppi, lattice, tile);
    const tables = tablesOf(settings, plate, plates, field);
    const out = tools.plane(width, height);
    const near = tables.edge && (await edgeOfInk(plate.coverage, mmToPx(settings.edgeMm, plates.ppi), tools));
    const edge = tables.edge && near ? { edge: { near, table: tables.edge } } : {};
    const pixelMm = pxToMm(1, plates.ppi);
    const { coverage } = plate;
    await tools.bands(
      'grain',
      { plate: coverage, out, field, pixelMm, table: tables.plain, ...edge },
      height,
    );
    if (near) tools.free(near.data);
    if (!area) return { ...plate, coverage: out };
    return { ...plate, coverage: await keptWithin(coverage, out, area.mask, tools) };
  });
  const grainHardness = Math.max(plates.grainHardness ?? 0, settings.hardness);
  return { plates: { ...plates, grainHardness, plates: await Promise.all(grained) } };
});

/** Tiles hold no settings and no seed, so that one of each kind is enough for good. */
const tiles = new Map<TileKind, Promise<Uint8Array<SharedArrayBuffer>>>();

function tileOf(pattern: TileKind, tools: Tools): Promise<Uint8Array<SharedArrayBuffer>> {
  const known = tiles.get(pattern);
  if (known) return known;
  const made = tools.whole('grainTile', pattern);
  tiles.set(pattern, made);
  made.catch(() => tiles.delete(pattern));
  return made;
}

function fieldOf(
  { pattern, sizeMm, hardness, seed }: Settings,
  order: number,
  ppi: number,
  lattice: Int8Array,
  tile: Uint8Array | undefined,
): GrainField {
  const own = mix(order, seed);
  if (pattern === 'mottle' || !tile) return mottleField(lattice, sizeMm, hardness / 100, own, pxToMm(1, ppi));
  return tileField(lattice, tile, pattern, sizeMm, own);
}

/**
 * Softest and hardest ramp between inked and bare, in spreads of the levels. Clouds stay soft; where single marks
 * stand on nothing there is nothing between them to tear.
 */
const RAMPS: Readonly<Record<TileKind, readonly [softest: number, hardest: number]>> = {
  cloud: [4, 1.2],
  speckle: [4, 1.6],
  fibre: [3.5, 1.2],
  stipple: [2.4, 0.15],
};
/** A ramp so many spreads wide, over the pixels of a period, takes up about one pixel. */
const RAMP_A_PIXEL = 4;

/** Tables for the plate and, if its edges are dry, for the edge of its ink. */
function tablesOf(
  settings: Settings,
  plate: PlateValue,
  { mm, ppi }: PlatesValue,
  field: GrainField,
): { plain: GrainTable; edge?: GrainTable } {
  const strength = (settings.strengthPercentOf[plate.id] ?? settings.strengthPercent) / 100;
  const opened = settings.openSolidsPercent / 100;
  const shares = levelShares(field, mm);
  const table = (strong: number) =>
    settings.pattern === 'mottle'
      ? mottleTable(shares, strong, opened)
      : gatherTable(shares, rampOf(settings.pattern, settings, ppi), strong * seenAt(settings, ppi), opened);
  const plain = table(strength);
  if (settings.edgePercent === 0) return { plain };
  return { plain, edge: table(Math.min(1, strength + settings.edgePercent / 100)) };
}

const seenAt = ({ sizeMm }: Settings, ppi: number) => seenOf(mmToPx(sizeMm, ppi));

/** Width of the ramp between inked and bare, levels: never steeper than the pixels can show. */
function rampOf(pattern: TileKind, { sizeMm, hardness }: Settings, ppi: number): number {
  const [softest, hardest] = RAMPS[pattern];
  const soft = (1 - hardness / 100) ** 2;
  return SPREAD * Math.max(hardest + soft * (softest - hardest), RAMP_A_PIXEL / mmToPx(sizeMm, ppi));
}
