/** A time as a ticket shows it; null below a twentieth of a second, which is no time to speak of. */
export function shownTime(ms: number | undefined): string | null {
  return ms === undefined || ms < 50 ? null : (ms / 1000).toFixed(1);
}
