import type { Complain } from '../bad-file.ts';

/** Most pixels of a picture: an A3 sheet at 600 ppi has 70 million. */
export const MOST_PIXELS = 120_000_000;

/** @throws BadFile for a picture without pixels or with too many */
export function refuseSize(width: number, height: number, complain: Complain): void {
  const shown = `the picture is ${width} x ${height} px`;
  if (width === 0 || height === 0) throw complain(`${shown}: there is nothing in it; save it again`);
  if (width * height <= MOST_PIXELS) return;
  const megapixels = Math.round((width * height) / 1e6);
  throw complain(
    `${shown} (${megapixels} megapixels); at most ${MOST_PIXELS / 1e6} megapixels are read: save it at a lower ppi`,
  );
}
