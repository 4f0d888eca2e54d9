import { BadInput, type Complaint } from '../../src/graph/complaint.ts';
import type { PictureHead } from './inspect.ts';

/** Resolutions that programs write without knowing any: they say nothing about the printed size. */
const EMPTY_PHRASES = [72, 96, 132];
const ASSUMED_PPI = 300;
const LEAST_PPI = 20;
const MOST_PPI = 12_000;

/**
 * The resolution a picture prints at: from the width that was set, else from the file where it can be believed,
 * else assumed with a complaint.
 *
 * @param settings `widthMm` or `ppi` as the person set them, `vectorPpi` for pictures without pixels of their own
 * @throws BadInput when both are set for a picture of pixels
 */
export function physicalSize(
  head: PictureHead,
  settings: { widthMm: number | null; ppi: number | null; vectorPpi: number },
  name: string,
): { ppi: number; complaints: Complaint[] } {
  if (head.format === 'svg') {
    const complaints =
      head.sizeMm || settings.widthMm
        ? []
        : [assumed(head, settings.vectorPpi, name, 'px are taken as 1/96 inch')];
    return { ppi: settings.vectorPpi, complaints };
  }
  if (settings.widthMm && settings.ppi)
    throw new BadInput(`${name}: give its printed width or its ppi, not both; one follows from the other`);
  if (settings.ppi) return { ppi: settings.ppi, complaints: [] };
  if (settings.widthMm) return { ppi: snapped((head.width * 25.4) / settings.widthMm), complaints: [] };
  const declared = head.ppi;
  if (!declared || !believable(declared.x))
    return {
      ppi: ASSUMED_PPI,
      complaints: [assumed(head, ASSUMED_PPI, name, `${ASSUMED_PPI} ppi are assumed`)],
    };
  const ppi = snapped(declared.x);
  if (Math.abs(declared.x - declared.y) <= declared.x * 0.01) return { ppi, complaints: [] };
  const message = `${name}: its pixels are not square (${declared.x.toFixed(1)} x ${declared.y.toFixed(1)} ppi); they are taken as square, so the drawing prints stretched. Save it with square pixels.`;
  return { ppi, complaints: [{ code: 'pixels-not-square', severity: 'warning', message }] };
}

function assumed(head: PictureHead, ppi: number, name: string, how: string): Complaint {
  const mm = (px: number) => ((px * 25.4) / ppi).toFixed(1);
  const said = head.ppi
    ? `${Math.round(head.ppi.x)} ppi, which says nothing about its size`
    : 'no printed size';
  return {
    code: 'size-assumed',
    severity: 'warning',
    message: `${name}: the file gives ${said}; ${how}, which makes it ${mm(head.width)} x ${mm(head.height)} mm. Set its printed width.`,
  };
}

function believable(ppi: number): boolean {
  return ppi >= LEAST_PPI && ppi <= MOST_PPI && !EMPTY_PHRASES.some((phrase) => Math.abs(ppi - phrase) < 0.5);
}

/** PNG counts whole pixels a metre, so that 600 ppi reads back as 599.9988. */
function snapped(ppi: number): number {
  const whole = Math.round(ppi);
  return Math.abs(ppi - whole) < 0.015 ? whole : ppi;
}
