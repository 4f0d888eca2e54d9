import { MM_PER_INCH } from '../../kernels/plane.ts';
import type { Complain } from '../bad-file.ts';
import { MOST_PIXELS } from '../head.ts';
import { attributesOf, readSvgSource, type SvgSource } from './svg-source.ts';

const PX_PER_INCH = 96;
/** Longer sides lose whole pixels in the renderer's 32-bit floats. */
const LONGEST_SIDE = 1_000_000;

/** CSS px in one unit (CSS Values 4, section 6.2). */
const UNITS: Record<string, number> = {
  in: PX_PER_INCH,
  cm: PX_PER_INCH / 2.54,
  mm: PX_PER_INCH / MM_PER_INCH,
  q: PX_PER_INCH / (4 * MM_PER_INCH),
  pt: PX_PER_INCH / 72,
  pc: PX_PER_INCH / 6,
  px: 1,
  '': 1,
};
const LENGTH = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*(in|cm|mm|q|pt|pc|px|)\s*$/i;

interface Length {
  px: number;
  physical: boolean;
}

/** Size of an SVG in CSS px; `mm` where its units are physical. */
interface SvgSize {
  px: [number, number];
  mm: [number, number] | null;
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
  const [widthPx, heightPx] = size.px;
  const inches = options.widthMm === undefined ? widthPx / PX_PER_INCH : options.widthMm / MM_PER_INCH;
  const width = Math.round(inches * options.vectorPpi);
  const height = Math.round(((inches * heightPx) / widthPx) * options.vectorPpi);
  const shown = `at ${options.vectorPpi} ppi the SVG is ${width} x ${height} px`;
  if (width < 1 || height < 1) throw complain(`${shown}: there is nothing in it; give it a larger size`);
  if (!(width * height <= MOST_PIXELS) || Math.max(width, height) > LONGEST_SIDE) {
    throw complain(
      `${shown}; at most ${MOST_PIXELS / 1e6} megapixels are drawn: give it a smaller size or a lower ppi`,
    );
  }
  return { width, height, sizeMm: size.mm, notes: notesOn(source) };
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
  const box = size.hasViewBox
    ? []
    : [`viewBox="0 0 ${size.px[0]} ${size.px[1]}"`, 'preserveAspectRatio="none"'];
  const root = [...kept, `width="${width}"`, `height="${height}"`, ...box].join(' ');
  return `${source.before} ${root}${source.after}`;
}

function readSize(source: SvgSource, complain: Complain): SvgSize {
  const found = new Map(attributesOf(source.rootAttributes).map(({ name, value }) => [name, value]));
  const box = readViewBox(found.get('viewBox'));
  const width = readLength(found.get('width'), complain);
  const height = readLength(found.get('height'), complain);
  const px = completeSize(width, height, box);
  if (!px) throw complain('the SVG says no size; save it with a width and a height, best in mm');
  const physical = width?.physical || height?.physical;
  const toMm = (length: number) => (length * MM_PER_INCH) / PX_PER_INCH;
  return { px, mm: physical ? [toMm(px[0]), toMm(px[1])] : null, hasViewBox: box !== null };
}

function completeSize(width: Length | null, height: Length | null, box: [number, number] | null) {
  if (width && height) return [width.px, height.px] as [number, number];
  if (!box) return null;
  const [across, down] = box;
  if (width) return [width.px, (width.px * down) / across] as [number, number];
  if (height) return [(height.px * across) / down, height.px] as [number, number];
  return box;
}

/** A length in px; null where there is none or it depends on a surrounding page (%, em). */
function readLength(text: string | undefined, complain: Complain): Length | null {
  const match = LENGTH.exec(text ?? '');
  if (!match) return null;
  const unit = match[2]!.toLowerCase();
  const px = Number(match[1]) * UNITS[unit]!;
  if (!(px > 0 && Number.isFinite(px))) {
    throw complain(`the SVG says its size is ${text!.trim()}; save it with a width and a height, best in mm`);
  }
  return { px, physical: unit !== '' && unit !== 'px' };
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
