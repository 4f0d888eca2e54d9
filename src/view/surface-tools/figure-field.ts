import type { NumberField } from '../../docket/fields.ts';

/** A number that a tool asks for, as the docket's number control takes it. */
export function figureField(
  title: string,
  help: string,
  unit: 'mm' | '%',
  [least, most, usual]: readonly [number, number, number],
): NumberField {
  const name = title.toLowerCase();
  return { as: 'number', name, title, help, usual, least, most, whole: false, unit, nullable: false };
}
