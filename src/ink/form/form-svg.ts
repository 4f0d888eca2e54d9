import type { Box, FormLayout } from './layout.ts';
import { textPath } from './letters.ts';

/** Line of labels against their height, and of the corner marks, mm. */
const STROKE = 0.12;
const MARK = { arm: 4, ring: 2, line: 0.15 } as const;

const n = (value: number) => Number(value.toFixed(4));

function rect({ x, y, width, height }: Box, fill: string): string {
  return `<rect x="${n(x)}" y="${n(y)}" width="${n(width)}" height="${n(height)}" fill="${fill}"/>`;
}

function mark([x, y]: readonly [number, number], stroke: string): string {
  const { arm, ring, line } = MARK;
  return (
    `<path d="M${n(x - arm)} ${n(y)}H${n(x + arm)}M${n(x)} ${n(y - arm)}V${n(y + arm)}" stroke="${stroke}" stroke-width="${line}"/>` +
    `<circle cx="${n(x)}" cy="${n(y)}" r="${ring}" fill="none" stroke="${stroke}" stroke-width="${line}"/>`
  );
}

function page({ page: { widthMm, heightMm } }: FormLayout, paper: string, inside: string): string {
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}">` +
    `${rect({ x: 0, y: 0, width: widthMm, height: heightMm }, paper)}${inside}</svg>`
  );
}

function letters(layout: FormLayout, plate: number | null, stroke: string): string {
  const { labels } = layout;
  const shown = labels.filter((label) => plate === null || label.plate === plate || label.plate === -1);
  return shown
    .map(
      ({ text, height, at }) =>
        `<path d="${textPath(text, height, at)}" fill="none" stroke="${stroke}" stroke-width="${n(height * STROKE)}" stroke-linecap="round" stroke-linejoin="round"/>`,
    )
    .join('');
}

/** One plate of a form as SVG at its printed size: white is paper, black solid, a grey the tint between. */
export function plateSvg(layout: FormLayout, plate: number): string {
  const grey = (tint: number) => {
    const value = Math.round(255 * (1 - tint));
    return `rgb(${value},${value},${value})`;
  };
  const patches = layout.patches.filter(({ tints }) => tints[plate]! > 0);
  return page(
    layout,
    '#fff',
    patches.map((patch) => rect(patch, grey(patch.tints[plate]!))).join('') +
      layout.bars
        .filter((bar) => bar.plate === plate)
        .map((bar) => rect(bar, bar.tint ? '#000' : '#fff'))
        .join('') +
      letters(layout, plate, '#000') +
      layout.corners.map((corner) => mark(corner, '#000')).join(''),
  );
}

/**
 * The whole form as it is predicted to print.
 *
 * @param colourOf CSS colour of a recipe, as shares 0..1 of each plate
 */
export function printedSvg(layout: FormLayout, colourOf: (tints: readonly number[]) => string): string {
  const alone = (plate: number) => colourOf(layout.plates.map((_, other) => (other === plate ? 1 : 0)));
  const paper = colourOf(layout.plates.map(() => 0));
  const all = colourOf(layout.plates.map(() => 1));
  return page(
    layout,
    paper,
    layout.patches.map((patch) => rect(patch, colourOf(patch.tints))).join('') +
      layout.bars.map((bar) => rect(bar, bar.tint ? alone(bar.plate) : paper)).join('') +
      letters(layout, null, all) +
      layout.corners.map((corner) => mark(corner, all)).join(''),
  );
}
