/** A name as part of a file name: letters, digits and dashes of any script, at most 60 characters. */
export function fileStem(name: string): string {
  const stem = name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return stem === '' ? 'untitled' : stem;
}

/** Name of the grey PDF of one plate: job, size, order and ink. */
export function pressPdfName(
  job: string,
  mm: readonly [number, number],
  plate: { order: number; id: string; ink: { name: string } },
): string {
  const size = `${Math.round(mm[0])}x${Math.round(mm[1])}mm`;
  return `${fileStem(job)}-${size}-${plate.order}-${fileStem(plate.ink.name)}.pdf`;
}
