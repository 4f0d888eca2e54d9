import type { SettingsOf } from '../../src/graph/node-kind.ts';
import { canOccur, type Fault, type pressFaults } from '../../src/nodes/press-faults.ts';
import { ALONG_FEED } from '../../src/nodes/register-offset.ts';
import type { PlatesValue } from '../engine/values.ts';
import { mix, seedOfSheet } from '../kernels/lattice.ts';
import { mmToPx } from '../kernels/plane.ts';
import { overprints, type Repeat } from '../kernels/press-print.ts';
import type { Spot } from '../kernels/press-spots.ts';

export type FaultSettings = SettingsOf<typeof pressFaults>;

/** How much of a fault occurs, 0..1. */
export function amountOf(fault: Fault, settings: FaultSettings): number {
  if (!canOccur(fault, settings.process)) return 0;
  return (settings[`${fault}Percent`] * settings.amountPercent) / 10_000;
}

/** Spots to a square decimetre at the full amount. */
const SPECKS_A_DM2 = 120;
const VOIDS_A_DM2 = 60;
const HICKEYS_A_DM2 = 6;

/** Specks stand in the stencil and so on every sheet; voids and hickeys come and go. */
export function spotsOf(settings: FaultSettings, order: number, mm: readonly [number, number]): Spot[] {
  const plate = mix(order, settings.seed);
  const sheet = seedOfSheet(plate, settings.sheet);
  return [
    ...scattered('void', amountOf('voids', settings) * VOIDS_A_DM2, settings.voidsMm, mix(101, sheet), mm),
    ...scattered(
      'speck',
      amountOf('specks', settings) * SPECKS_A_DM2,
      settings.specksMm,
      mix(102, plate),
      mm,
    ),
    ...scattered(
      'hickey',
      amountOf('hickeys', settings) * HICKEYS_A_DM2,
      settings.hickeysMm,
      mix(103, sheet),
      mm,
    ),
  ];
}

function scattered(
  as: Spot['as'],
  perDm2: number,
  sizeMm: number,
  seed: number,
  [widthMm, heightMm]: readonly [number, number],
): Spot[] {
  const count = Math.round((perDm2 * widthMm * heightMm) / 10_000);
  return Array.from({ length: count }, (_, k) => {
    const chance = (n: number) => mix(k * 8 + n, seed) / 0x100000000;
    const radius = (sizeMm / 2) * (0.35 + 0.65 * chance(2) * chance(3));
    return { as, x: chance(0) * widthMm, y: chance(1) * heightMm, radius, seed: mix(k, seed) };
  });
}

/** What the ghost and the set-off leave at most of the ink they repeat. */
const GHOST = 0.25;
const SET_OFF = 0.25;

/** Repeats of the plate on itself: a ghost farther along the feed, and the mirrored set-off of the sheet before. */
export function repeatsOf(settings: FaultSettings, order: number, plates: PlatesValue): Repeat[] {
  const [ax, ay] = ALONG_FEED[settings.feedEdge];
  const { ppi } = plates;
  const { width, height } = plates.plates[0]!.coverage;
  const seed = seedOfSheet(mix(order, settings.seed), settings.sheet);
  const drift = (n: number) => Math.round(mmToPx(settings.setOffMm, ppi) * (mix(n, seed) / 0x80000000 - 1));
  const away = mmToPx(settings.ghostMm, ppi);
  const repeats = [
    {
      xx: 1 as const,
      yy: 1 as const,
      x0: -Math.round(ax * away),
      y0: -Math.round(ay * away),
      share: amountOf('ghost', settings) * GHOST,
    },
    {
      xx: ax === 0 ? (-1 as const) : (1 as const),
      yy: ax === 0 ? (1 as const) : (-1 as const),
      x0: (ax === 0 ? width - 1 : 0) + drift(104),
      y0: (ax === 0 ? 0 : height - 1) + drift(105),
      share: amountOf('setOff', settings) * SET_OFF,
    },
  ];
  return repeats.flatMap(({ share, ...place }): Repeat[] =>
    share > 0 ? [{ ...place, laid: overprints(share) }] : [],
  );
}
