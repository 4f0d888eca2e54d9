import type { Mark } from '../../../src/press/marks.ts';
import { number, numbers } from './objects.ts';

const POINTS_PER_MM = 72 / 25.4;

/**
 * Marks as page content, in the colour spaces /All and /Ink0, /Ink1, ...
 *
 * @param pageHeight in points: marks count from the top, PDF from the bottom
 */
export function markContent(marks: readonly Mark[], pageHeight: number): string {
  const place = ([x, y]: readonly [number, number]) =>
    numbers([x * POINTS_PER_MM, pageHeight - y * POINTS_PER_MM]);
  return marks
    .map((mark) => {
      const space = mark.plate === null ? '/All' : `/Ink${mark.plate}`;
      if (mark.shape === 'box') {
        const [left, top, right, bottom] = mark.box;
        const corner = place([left, bottom]);
        const size = numbers([(right - left) * POINTS_PER_MM, (bottom - top) * POINTS_PER_MM]);
        return `${space} cs ${number(mark.tintPercent / 100)} scn ${corner} ${size} re f`;
      }
      const [first, ...rest] = mark.path.map(place);
      const path = [`${first} m`, ...rest.map((point) => `${point} l`)].join(' ');
      return `${space} CS 1 SCN ${number(mark.widthMm * POINTS_PER_MM)} w ${path} S`;
    })
    .join('\n');
}
