import { curveSchema } from '../graph/inks.ts';

type Curve = [number, number][];

/** A film-to-print curve as a person writes it: pairs of %, `10 6, 50 45`. */
export function curveText(curve: readonly (readonly [number, number])[] | undefined): string {
  return (curve ?? []).map(([film, print]) => `${film} ${print}`).join(', ');
}

/** The curve that a text stands for; undefined for an empty text, null when it is none. */
export function readCurve(text: string): Curve | undefined | null {
  const pairs = text
    .split(/[,;\n]/)
    .map((pair) => pair.trim())
    .filter((pair) => pair !== '');
  if (pairs.length === 0) return undefined;
  const points = pairs.map((pair) => pair.split(/[\s:/>-]+/).map(Number));
  const read = curveSchema.safeParse(points);
  return read.success ? read.data : null;
}
