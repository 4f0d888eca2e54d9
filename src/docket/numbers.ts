import type { NumberField } from './fields.ts';

/** Fine steps for small ranges: what the hand can still tell apart in print. */
const STEPS: readonly [range: number, step: number][] = [
  [2, 0.01],
  [20, 0.05],
  [200, 0.1],
];

/** By how much an arrow key changes a number. */
export function stepOf({ unit, whole, least, most }: NumberField): number {
  if (whole || unit === '%' || unit === 'ppi') return 1;
  if (unit === 'deg') return 0.01;
  return STEPS.find(([range]) => most - least <= range)?.[1] ?? 1;
}

/** The nearest number of the field's steps within its range. */
export function snapped(field: NumberField, value: number): number {
  const step = stepOf(field);
  const even = Number((Math.round(value / step) * step).toFixed(4));
  return Math.min(field.most, Math.max(field.least, even));
}

/** Units as they are written on screen. */
export function shownUnit(unit: string): string {
  return unit === 'mm2' ? 'mm\u00b2' : unit === 'deg' ? '\u00b0' : unit;
}

/** A number as a person writes it: at most four decimals, no idle zeros. */
export function shownNumber(value: number): string {
  return String(Number(value.toFixed(4))).replace('-', '\u2212');
}

/** Number and unit in one: `0.35 mm`, `35 %`, `0.05°`. */
export function shown(value: number, unit: string): string {
  const gap = unit === '' || unit === 'deg' ? '' : '\u00a0';
  return `${shownNumber(value)}${gap}${shownUnit(unit)}`;
}

/** What a typed text stands for: a number in the range, nothing, or a sentence on what is allowed. */
export function readNumber(field: NumberField, typed: string): { value: number | null } | { wrong: string } {
  const plain = typed
    .trim()
    .replace(/\s*(mm2|mm\u00b2|mm|%|deg|\u00b0|ppi)$/i, '')
    .replace(',', '.')
    .replace(/^\u2212/, '-');
  if (plain === '' && field.nullable) return { value: null };
  const value = /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : Number.NaN;
  const fits = value >= field.least && value <= field.most && (!field.whole || Number.isInteger(value));
  return fits ? { value } : { wrong: rangeOf(field) };
}

/** What a number may be, as a sentence. */
export function rangeOf(field: NumberField): string {
  const whole = field.whole ? 'a whole number ' : '';
  const empty = field.nullable ? ', or nothing' : '';
  return `${field.title} takes ${whole}${whole ? 'from ' : ''}${shownNumber(field.least)} to ${shown(field.most, field.unit)}${empty}.`;
}

/** Where a ruler is divided so that the usual value stands well inside it: 1 is even, above 1 gives small values more room. */
export function bendOf({ least, most, usual, unit }: NumberField): number {
  if (unit === '%' || typeof usual !== 'number' || usual <= least) return 1;
  const share = (usual - least) / (most - least);
  return share < 0.2 ? Math.log(share) / Math.log(1 / 3) : 1;
}

/** Place 0..1 of a value on the field's slider. */
export function toPlace(field: NumberField, value: number): number {
  const share = (value - field.least) / (field.most - field.least);
  return Math.min(1, Math.max(0, share)) ** (1 / bendOf(field));
}

/** The value at a place 0..1 of the field's slider, on the field's steps. */
export function fromPlace(field: NumberField, place: number): number {
  return snapped(field, field.least + (field.most - field.least) * place ** bendOf(field));
}
