import { textWidth } from '../ink/form/letters.ts';

/** Height of capitals in the margin. */
export const TEXT_MM = 2.2;
const APART_MM = 3;

/** What the margin says: the job for all plates, and each plate's own name in print order. */
export interface Labels {
  title: string;
  names: readonly string[];
}

export interface WrittenName {
  text: string;
  /** Index of the only plate that prints it; null for all. */
  plate: number | null;
  xMm: number;
}

/** Title and names side by side in as many rows as they need; what is wider than a row is cut off at its end. */
export function nameRows({ title, names }: Labels, widthMm: number): WrittenName[][] {
  const items = [
    { text: title, plate: null },
    ...names.map((name, plate) => ({ text: `${plate + 1} ${name}`, plate })),
  ];
  const rows: WrittenName[][] = [];
  let x = Number.POSITIVE_INFINITY;
  for (const { text: whole, plate } of items) {
    const text = fitting(whole, widthMm);
    const width = textWidth(text, TEXT_MM);
    if (x + width > widthMm) {
      rows.push([]);
      x = 0;
    }
    rows.at(-1)!.push({ text, plate, xMm: x });
    x += width + APART_MM;
  }
  return rows;
}

function fitting(text: string, widthMm: number): string {
  let most = text.length;
  while (most > 1 && textWidth(text.slice(0, most), TEXT_MM) > widthMm) most--;
  return text.slice(0, most);
}
