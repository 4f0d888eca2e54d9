import { z } from 'zod';
import { defineNode, type Preset } from '../graph/node-kind.ts';
import { choice, measure, perPlate, seed, sheetNumber } from './settings.ts';

export const PROCESSES = [
  'any',
  'stencil-duplicator',
  'hand-screen',
  'automatic-screen',
  'relief',
  'offset',
] as const;

export type Process = (typeof PROCESSES)[number];

/** A fault's amount, in % of the most that is usual in practice. */
const amount = (title: string, help: string) => measure('%', 0, 100, 50, { title, help });
const size = (least: number, most: number, usual: number, title: string, help: string) =>
  measure('mm', least, most, usual, { title, help });

const settings = z.strictObject({
  process: choice(PROCESSES, 'any', {
    title: 'Process',
    help: 'Only faults that this kind of press has can occur.',
  }),
  amountPercent: measure('%', 0, 100, 30, {
    title: 'Amount of all',
    help: 'All faults together, from none to all of what is set below.',
  }),
  feedEdge: choice(['top', 'right', 'bottom', 'left'], 'top', {
    title: 'Feed edge',
    help: 'The edge that enters the press first: tracks and ghosts run along the feed.',
  }),
  specksPercent: amount(
    'Specks',
    'Dots of ink where pinholes in a stencil let it through; the same on every sheet.',
  ),
  specksMm: size(0.05, 5, 0.3, 'Size of specks', 'Width of the largest.'),
  voidsPercent: amount('Voids', 'Spots left bare where ink dried in or dust lay; others on every sheet.'),
  voidsMm: size(0.05, 10, 0.7, 'Size of voids', 'Width of the largest.'),
  hickeysPercent: amount('Hickeys', 'A dot of ink in a pale halo, from dirt on plate or blanket.'),
  hickeysMm: size(0.3, 20, 2.5, 'Size of hickeys', 'Width of the halo of the largest.'),
  tracksPercent: amount('Roller tracks', 'Bands along the feed where the feed rollers took ink off.'),
  tracksMm: size(1, 50, 10, 'Width of tracks', 'Width of one band.'),
  starvationPercent: amount(
    'Ink starvation',
    'Ink runs out towards the end of the feed, more in some lanes.',
  ),
  starvationMm: size(5, 1000, 120, 'Reach of starvation', 'How far from the far edge the ink is short.'),
  streaksPercent: amount('Streaks', 'Thin paler lines along the pull of the squeegee.'),
  streaksMm: size(0.2, 20, 1.5, 'Width of streaks', 'Width of the broadest.'),
  floodingPercent: amount('Flooding', 'Ink creeps out under the stencil and swells the edges in places.'),
  floodingMm: size(0.05, 3, 0.3, 'Reach of flooding', 'How far ink creeps at most.'),
  setOffPercent: amount('Set-off', 'The sheet below takes a faint mirrored print from the one laid on it.'),
  setOffMm: size(0, 20, 3, 'Shift of set-off', 'How far the stacked sheets lie off one another at most.'),
  ghostPercent: amount('Ghost', 'A faint repeat of the print, further along the feed.'),
  ghostMm: size(1, 500, 45, 'Distance of the ghost', 'From the print to its repeat.'),
  squeezePercent: amount('Edge squeeze', 'Pressure drives ink to the rim: darker there, paler just inside.'),
  squeezeMm: size(0.05, 3, 0.25, 'Width of the rim', 'Rim and paler line together are three times as wide.'),
  pressurePercent: amount(
    'Uneven pressure',
    'Slowly paler and darker from one part of the sheet to another.',
  ),
  pressureMm: size(20, 1000, 150, 'Reach of pressure', 'From a pale part to the next.'),
  densityPercent: measure('%', 50, 100, 100, {
    title: 'Ink film',
    help: 'How full a film of ink the sheet takes; a short one prints paler.',
  }),
  densityPercentOf: perPlate(z.number().min(50).max(100), {
    title: 'Ink film, by plate',
    help: 'For single plates.',
  }),
  sheet: sheetNumber(),
  seed: seed(1),
});

/** The figures are ours, chosen by eye on our own specimens. */
const list: readonly Preset[] = [
  {
    name: 'First frost',
    help: 'A clean run with a few specks',
    settings: {
      amountPercent: 15,
      tracksPercent: 0,
      streaksPercent: 0,
      floodingPercent: 0,
      ghostPercent: 0,
      starvationPercent: 10,
    },
  },
  {
    name: 'Long drought',
    help: 'Ink runs short along the feed',
    settings: {
      process: 'stencil-duplicator',
      amountPercent: 90,
      starvationPercent: 100,
      starvationMm: 160,
      tracksPercent: 40,
      specksPercent: 20,
      voidsPercent: 40,
      setOffPercent: 0,
      densityPercent: 88,
    },
  },
  {
    name: 'Puddle',
    help: 'Ink creeps under the stencil',
    settings: {
      process: 'hand-screen',
      amountPercent: 80,
      floodingPercent: 90,
      floodingMm: 0.45,
      streaksPercent: 20,
      voidsPercent: 15,
      specksPercent: 15,
      pressurePercent: 40,
    },
  },
  {
    name: 'Rake',
    help: 'Streaks of the squeegee and bare spots',
    settings: {
      process: 'hand-screen',
      amountPercent: 80,
      streaksPercent: 100,
      streaksMm: 2.2,
      voidsPercent: 40,
      specksPercent: 20,
      floodingPercent: 0,
      pressurePercent: 50,
    },
  },
  {
    name: 'Heavy dew',
    help: 'Prints stick: set-off and ghosts',
    settings: {
      process: 'offset',
      amountPercent: 60,
      setOffPercent: 100,
      setOffMm: 4,
      ghostPercent: 80,
      hickeysPercent: 20,
      starvationPercent: 20,
    },
  },
  {
    name: 'Cold clay',
    help: 'Pressed hard: rims and uneven solids',
    settings: {
      process: 'relief',
      amountPercent: 90,
      squeezePercent: 100,
      squeezeMm: 0.3,
      pressurePercent: 80,
      pressureMm: 90,
      voidsPercent: 30,
      setOffPercent: 30,
    },
  },
];

export const pressFaults = defineNode({
  kind: 'press-faults',
  version: 1,
  title: 'Press faults',
  help: 'What a press adds of its own: specks, voids, tracks, ghosts, rims and uneven ink. Only in the proof.',
  role: 'simulation',
  runs: 'surface',
  inputs: { plates: { type: 'plates' }, area: { type: 'area', optional: true } },
  outputs: { plates: { type: 'plates' } },
  settings,
  presets: {
    shape: settings.omit({ feedEdge: true, densityPercentOf: true, sheet: true, seed: true }),
    list,
  },
});

/** The faults, and the settings that say how much of each. */
export type Fault =
  | 'specks'
  | 'voids'
  | 'hickeys'
  | 'tracks'
  | 'starvation'
  | 'streaks'
  | 'flooding'
  | 'setOff'
  | 'ghost'
  | 'squeeze'
  | 'pressure';

/** Which faults a process has (common practice, no source). */
const FAULTS_OF: Readonly<Record<Exclude<Process, 'any'>, readonly Fault[]>> = {
  'stencil-duplicator': ['specks', 'voids', 'tracks', 'starvation', 'setOff', 'pressure'],
  'hand-screen': ['specks', 'voids', 'streaks', 'flooding', 'pressure'],
  'automatic-screen': ['specks', 'voids', 'streaks'],
  relief: ['voids', 'setOff', 'squeeze', 'pressure'],
  offset: ['hickeys', 'starvation', 'setOff', 'ghost'],
};

/** Whether a process has a fault. */
export function canOccur(fault: Fault, process: Process): boolean {
  return process === 'any' || FAULTS_OF[process].includes(fault);
}
