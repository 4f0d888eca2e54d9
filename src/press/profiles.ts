import type { Press, PressFigure, Process } from '../graph/press.ts';

type Source = 'published' | 'common-practice';
type Figures = Press['figures'];

const practice = (value: number) => ({ value, source: 'common-practice' as Source });
/** From a printer's published specification or handbook. */
const published = (value: number) => ({ value, source: 'published' as Source });

/**
 * Figures to start from, by process; every one is to be replaced by what the printer says or a test shows. Where
 * practice gives a range its middle stands here. `own` starts empty.
 */
export const PROFILES: Readonly<Record<Process, Figures>> = {
  stencil: {
    toleranceAlongMm: practice(1),
    toleranceAcrossMm: practice(0.5),
    stretchMostMm: published(3),
    trapMm: practice(0.5),
    leastPositiveMm: practice(0.18),
    leastReverseMm: practice(0.35),
    mostSolidPercent: published(85),
    largeSolidCm2: practice(25),
    mostInkPercent: practice(200),
    marginMm: published(6.35),
    leadEdgeMm: practice(15),
    centreStripMm: practice(30),
    rulingLpi: practice(85),
    dotMm: practice(0.1),
  },
  'hand-screen': {
    toleranceAlongMm: practice(0.5),
    toleranceAcrossMm: practice(0.5),
    trapMm: practice(0.4),
    leastPositiveMm: practice(0.3),
    leastReverseMm: practice(0.6),
    leastTintPercent: published(15),
    mostTintPercent: published(85),
    rulingLpi: practice(45),
    dotMm: practice(0.25),
  },
  'automatic-screen': {
    toleranceAlongMm: practice(0.25),
    toleranceAcrossMm: practice(0.25),
    trapMm: practice(0.25),
    leastPositiveMm: practice(0.3),
    leastReverseMm: practice(0.6),
    leastTintPercent: published(15),
    mostTintPercent: published(85),
    rulingLpi: practice(55),
    dotMm: practice(0.2),
  },
  relief: {
    toleranceAlongMm: practice(0.5),
    toleranceAcrossMm: practice(0.5),
    leastPositiveMm: practice(0.45),
    leastReverseMm: practice(0.45),
  },
  offset: {
    toleranceAlongMm: practice(0.1),
    toleranceAcrossMm: practice(0.1),
    trapMm: published(0.08),
    leastPositiveMm: published(0.08),
    leastReverseMm: published(0.17),
    mostInkPercent: practice(270),
    bleedMm: published(3),
    dotMm: practice(0.025),
  },
  own: {},
};

/** What a process calls a plate. */
export const PLATE_WORDS: Readonly<Record<Process, string>> = {
  stencil: 'master',
  'hand-screen': 'screen',
  'automatic-screen': 'screen',
  relief: 'block',
  offset: 'plate',
  own: 'plate',
};

export const PROCESS_TITLES: Readonly<Record<Process, string>> = {
  stencil: 'Stencil duplicator',
  'hand-screen': 'Screen, by hand',
  'automatic-screen': 'Screen, automatic',
  relief: 'Relief',
  offset: 'Offset',
  own: 'A press of your own',
};

/** What a figure says, for forms and job sheets. */
export const FIGURE_TITLES: Readonly<Record<PressFigure, string>> = {
  toleranceAlongMm: 'Drift along the feed',
  toleranceAcrossMm: 'Drift across the feed',
  stretchMostMm: 'Stretch along the feed, at most',
  trapMm: 'Trap',
  leastPositiveMm: 'Thinnest line',
  leastReverseMm: 'Thinnest line left out',
  leastTintPercent: 'Palest tint',
  mostTintPercent: 'Darkest tint',
  mostSolidPercent: 'Large solids, at most',
  largeSolidCm2: 'A solid is large from',
  mostInkPercent: 'All inks together, at most',
  marginMm: 'Edge that cannot print',
  leadEdgeMm: 'Lead edge to keep light',
  centreStripMm: 'Middle of the feed to keep light',
  bleedMm: 'Bleed',
  rulingLpi: 'Halftone ruling',
  dotMm: 'Smallest dot',
  meshPerCm: 'Mesh of the screen',
};

/** A press of a process with the figures to start from. */
export function pressOf(process: Process): Press {
  return { name: PROCESS_TITLES[process], process, figures: PROFILES[process] };
}

/** A figure of a press; null where it is not known. */
export function figureOf(press: Press | null, figure: PressFigure): number | null {
  return press?.figures[figure]?.value ?? null;
}

const UNITS: readonly [suffix: string, unit: string][] = [
  ['Mm', 'mm'],
  ['Percent', '%'],
  ['Cm2', 'cm²'],
  ['Lpi', 'lpi'],
  ['PerCm', 'threads per cm'],
];

/** Unit of a figure, from the end of its name. */
export function unitOf(figure: PressFigure): string {
  return UNITS.find(([suffix]) => figure.endsWith(suffix))![1];
}
