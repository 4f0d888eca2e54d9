/** How far numbers stand apart at least, and the finest ticks, px. */
const NUMBERS_PX = 64;
const TICKS_PX = 6;

export interface Tick {
  mm: number;
  /** From the ruler's start, px. */
  at: number;
  rank: 'number' | 'half' | 'fine';
}

/** The least of 1, 2, 5 times a power of ten that is `least` or more. */
export function niceStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  const step = [1, 2, 5, 10].find((times) => times * power >= least * (1 - 1e-9))!;
  return step * power;
}

/**
 * The ticks of a ruler: numbers at 1, 2 or 5 times a power of ten, finer ticks between them as there is room.
 *
 * @param zero where 0 mm is, px from the ruler's start
 * @param pxPerMm size of a mm
 * @param length of the ruler, px
 */
export function rulerTicks(zero: number, pxPerMm: number, length: number): Tick[] {
  const step = niceStep(NUMBERS_PX / pxPerMm);
  const fine = fineness(step, TICKS_PX / pxPerMm);
  const half = fine % 2 === 0 ? fine / 2 : fine;
  const first = Math.ceil((-zero / pxPerMm / step) * fine);
  const last = Math.floor(((length - zero) / pxPerMm / step) * fine);
  const ticks: Tick[] = [];
  for (let i = first; i <= last; i++) {
    const mm = (i * step) / fine;
    const rank = i % fine === 0 ? 'number' : i % half === 0 ? 'half' : 'fine';
    ticks.push({ mm, at: zero + mm * pxPerMm, rank });
  }
  return ticks;
}

/** Into how many equal parts, each 1, 2 or 5 times a power of ten, a step falls that are `least` or more. */
function fineness(step: number, least: number): number {
  return [10, 5, 4, 2].find((parts) => step / parts >= least && isNice(step / parts)) ?? 1;
}

function isNice(value: number): boolean {
  return Math.abs(niceStep(value * (1 - 1e-6)) / value - 1) < 1e-6;
}
