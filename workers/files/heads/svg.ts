import { MM_PER_INCH, mmToPx } from '../../kernels/plane.ts';
import type { Complain } from '../bad-file.ts';
import { MOST_PIXELS } from './limits.ts';
import { attributesOf, readSvgSource, type SvgSource } from './svg-source.ts';

/** A CSS px, the user unit (CSS Values 4, section 6.2). */
const MM_PER_PX = MM_PER_INCH / 96;
/** Longer sides lose whole pixels in the renderer's 32-bit floats. */
const LONGEST_SIDE = 1_000_000;

/** Millimetres in one unit. */
const UNITS: Record<string, number> = {
  in: MM_PER_INCH,
  cm: 10,
  mm: 1,
  q: 0.25,
  pt: MM_PER_INCH / 72,
  pc: MM_PER_INCH / 6,
  px: MM_PER_PX,
  '': MM_PER_PX,
};
const LENGTH = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*(in|cm|mm|q|pt|pc|px|)\s*$/i;

interface Length {
  mm: number;
  physical: boolean;
}

/** Size of an SVG, `physical` where its own units say so and not the 96 px an inch of the web. */
interface SvgSize {
  mm: [number, number];
  physical: boolean;
  hasViewBox: boolean;
}

/**
 * Pixel size at which an SVG is drawn, and what the user should know of it.
 * @param options.widthMm replaces the file's own width; a file without physical size is otherwise drawn
 * at 96 of its units an inch
 * @throws BadFile for broken markup, no size, and sizes over the limit
 */
export function measureSvg(
  bytes: Uint8Array,
  options: { vectorPpi: number; widthMm?: number },
  complain: Complain,
) {
  const source = readSvgSource(bytes, complain);
  const size = readSize(source, complain);
  const [ownWidth, ownHeight] = size.mm;
  const widthMm = options.widthMm ?? ownWidth;
  const pixels = (mm: number) => Math.round(mmToPx(mm, options.vectorPpi));
  const width = pixels(widthMm);
  const height = pixels((widthMm * ownHeight) / ownWidth);
  const shown = `at ${options.vectorPpi} ppi the SVG is ${width} x ${height} px`;
  if (width < 1 || height < 1) throw complain(`${shown}: there is nothing in it; give it a larger size`);
  if (!(width * height <= MOST_PIXELS) || Math.max(width, height) > LONGEST_SIDE) {
    throw complain(
      `${shown}; at most ${MOST_PIXELS / 1e6} megapixels are drawn: give it a smaller size or a lower ppi`,
    );
  }
  return { width, height, sizeMm: size.physical ? size.mm : null, notes: notesOn(source) };
}

/** The SVG's text with its root set to exactly `width` x `height` px. @throws BadFile */
export function svgAtSize(bytes: Uint8Array, width: number, height: number, complain: Complain): string {
  const source = readSvgSource(bytes, complain);
  const size = readSize(source, complain);
  const replaced = size.hasViewBox
    ? ['width', 'height']
    : ['width', 'height', 'viewBox', 'preserveAspectRatio'];
  const kept = attributesOf(source.rootAttributes)
    .filter(({ name }) => !replaced.includes(name))
    .map(({ text }) => text);
  const [across, down] = size.mm.map((mm) => mm / MM_PER_PX);
  const box = size.hasViewBox ? [] : [`viewBox="0 0 ${across} ${down}"`, 'preserveAspectRatio="none"'];
  const root = [...kept, `width="${width}"`, `height="${height}"`, ...box].join(' ');
  return `${source.before} ${root}${source.after}`;
}

function readSize(source: SvgSource, complain: Complain): SvgSize {
  const found = new Map(attributesOf(source.rootAttributes).map(({ name, value }) => [name, value]));
  const box = readViewBox(found.get('viewBox'));
  const width = readLength(found.get('width'), complain);
  const height = readLength(found.get('height'), complain);
  const mm = completeSize(width, height, box);
  if (!mm) throw complain('the SVG says no size; save it with a width and a height, best in mm');
  return { mm, physical: Boolean(width?.physical || height?.physical), hasViewBox: box !== null };
}

function completeSize(
  width: Length | null,
  height: Length | null,
  box: [number, number] | null,
): [number, number] | null {
  if (width && height) return [width.mm, height.mm];
  if (!box) return null;
  const [across, down] = box;
  if (width) return [width.mm, (width.mm * down) / across];
  if (height) return [(height.mm * across) / down, height.mm];
  return [across * MM_PER_PX, down * MM_PER_PX];
}

/** A length; null where there is none or it depends on a surrounding page (%, em). */
function readLength(text: string | undefined, complain: Complain): Length | null {
  const match = LENGTH.exec(text ?? '');
  if (!match) return null;
  const unit = match[2]!.toLowerCase();
  const mm = Number(match[1]) * UNITS[unit]!;
  if (!(mm > 0 && Number.isFinite(mm))) {
    throw complain(`the SVG says its size is ${text!.trim()}; save it with a width and a height, best in mm`);
  }
  return { mm, physical: unit !== '' && unit !== 'px' };
}

function readViewBox(text: string | undefined): [number, number] | null {
  const numbers = (text ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [, , across, down] = numbers;
  const usable = numbers.length === 4 && numbers.every(Number.isFinite) && across! > 0 && down! > 0;
  return usable ? [across!, down!] : null;
}

function notesOn({ after }: SvgSource): string[] {
  const notes: string[] = [];
  if (/<([\w.-]+:)?text[\s/>]/.test(after)) {
    notes.push('its text is left out, since fonts are not read; turn text into outlines');
  }
  if (/<([\w.-]+:)?image\s[^>]*?\bhref\s*=\s*["'](?!\s*data:)/.test(after)) {
    notes.push('it links pictures kept in other files; they are left out: embed them');
  }
  return notes;
}
