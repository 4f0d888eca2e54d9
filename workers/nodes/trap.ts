import type { Lab, Stock } from '../../src/graph/inks.ts';
import type { SettingsOf } from '../../src/graph/node-kind.ts';
import { printModel } from '../../src/ink/model.ts';
import { paperStock } from '../../src/nodes/paper-stock.ts';
import { trap as kind } from '../../src/nodes/trap.ts';
import { type TrapPrint, trapBetween } from '../../src/press/trap-rule.ts';
import { evaluation, type Tools } from '../engine/evaluation.ts';
import { samePlates } from '../engine/same-plates.ts';
import type { DrawingValue, PlatesValue, RegionsValue, TrapBorder } from '../engine/values.ts';
import { mmToPx } from '../kernels/plane.ts';
import type { TrapArgs, TrapRules } from '../kernels/trap.ts';
import { columnDistances } from './column-distances.ts';
import { keptWithin } from './kept-within.ts';

type Settings = SettingsOf<typeof kind>;

export const trap = evaluation(kind, async ({ settings, inputs, tools }) => {
  const { plates, regions, drawing, area } = inputs;
  samePlates(plates, drawing.line);
  const { width, height } = regions.labels;
  samePlates(plates, { ...drawing.line, width, height });
  const traps = await decide(plates, regions, settings, tools);
  const rules = rulesOf(traps, regions.table.length, plates.ppi);
  if (rules.targets.length === 0) return { plates: { ...plates, traps } };
  const cover = await coverOf(drawing, settings.toleranceMm, tools);
  const outs = plates.plates.map(({ coverage }) => ({ from: coverage, out: tools.plane(width, height) }));
  await tools.bands('trap', { labels: regions.labels, plates: outs, rules, cover }, height);
  tools.free(cover.columns);
  const trapped = plates.plates.map(async (plate, i) => {
    const { from, out } = outs[i]!;
    return { ...plate, coverage: area ? await keptWithin(from, out, area.mask, tools) : out };
  });
  return { plates: { ...plates, traps, plates: await Promise.all(trapped) } };
});

/** What happens at every border, from the mean tints of the regions. */
async function decide(
  { plates, printing }: PlatesValue,
  { labels, table, ids }: RegionsValue,
  { widthMm, pairs }: Settings,
  tools: Tools,
): Promise<TrapBorder[]> {
  const count = table.length;
  const means = await Promise.all(
    plates.map(({ coverage }) => tools.whole('regionTints', { labels, plate: coverage, count })),
  );
  /** To a thousandth, so that a mean over fewer pixels of a preview decides alike. */
  const tintsOf = (label: number) => means.map((mean) => Math.round((mean[label]! / 255) * 1000) / 1000);
  const tints = Array.from({ length: count + 1 }, (_, label) => tintsOf(label));
  const print = trapPrint(plates, printing);
  const own = new Map(pairs.map(({ between, widthMm: width }) => [keyOf(...between), width]));
  return table.flatMap(({ label, neighbours }) =>
    neighbours.flatMap(({ label: other, sharedMm }): TrapBorder[] => {
      if (other < label) return [];
      const both = [tints[label]!, tints[other]!] as const;
      const byHand = own.get(keyOf(ids[label - 1] ?? '', ids[other - 1] ?? ''));
      const decision = trapBetween(...both, print, byHand !== undefined);
      const width = decision.does === 'none' ? 0 : (byHand ?? widthMm);
      return [{ ...decision, between: [label, other], sharedMm, widthMm: width, tints: both }];
    }),
  );
}

const keyOf = (a: string, b: string) => (a < b ? `${a} ${b}` : `${b} ${a}`);

/** Paper and inks as trapping sees them: on the stock the inks are given on. */
function trapPrint(plates: PlatesValue['plates'], printing: PlatesValue['printing']): TrapPrint {
  const usual = paperStock.settings.parse({});
  const paper: Stock = printing.reference ?? { lab: usual.lab, surface: usual.surface };
  const passes = plates.map(({ pass }) => pass);
  const model = printModel({ paper, inks: plates.map(({ ink }) => ink), passes, ...printing });
  const known = new Map<string, Lab>();
  return {
    plates: plates.map(({ ink }) => ({ opacity: ink.opacity })),
    labOf: (tints) => {
      const key = tints.join(' ');
      const lab = known.get(key) ?? model.labOf(tints);
      known.set(key, lab);
      return lab;
    },
  };
}

/** The decisions by the region whose coverage is carried over. */
function rulesOf(traps: readonly TrapBorder[], count: number, ppi: number): TrapRules {
  const carried = traps
    .filter(({ does, widthMm }) => does !== 'none' && mmToPx(widthMm, ppi) >= 1)
    .map(({ between: [first, second], from, plates, does, widthMm }) => ({
      source: from === 'first' ? first : second,
      target: from === 'first' ? second : first,
      radius: mmToPx(widthMm, ppi),
      plates: plates.reduce((bits, plate) => bits | (1 << plate), 0),
      holdsBack: does === 'hold-back' ? 1 : 0,
    }))
    .sort((a, b) => a.source - b.source || a.target - b.target);
  const starts = new Uint32Array(count + 2);
  for (const { source } of carried) starts[source + 1]!++;
  for (let label = 0; label <= count; label++) starts[label + 1]! += starts[label]!;
  return {
    starts,
    targets: Uint32Array.from(carried, ({ target }) => target),
    radius: Float64Array.from(carried, ({ radius }) => radius),
    plates: Uint16Array.from(carried, ({ plates }) => plates),
    holdsBack: Uint8Array.from(carried, ({ holdsBack }) => holdsBack),
    reach: carried.reduce((most, { radius }) => Math.max(most, radius), 0),
  };
}

/** Distances to paper, and the depth from which a line hides a border. */
async function coverOf(
  { line, ppi }: DrawingValue,
  toleranceMm: number,
  tools: Tools,
): Promise<NonNullable<TrapArgs['cover']>> {
  const depth = mmToPx(toleranceMm, ppi) + 0.5;
  const paper = { lowest: 0, highest: 127, limit: Math.ceil(depth) + 1, framed: false };
  const columns = await columnDistances(line, paper, tools);
  return { line, columns, enough2: Math.ceil(depth * depth) - 1 };
}
