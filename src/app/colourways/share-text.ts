/** A share of the sheet as typed, %: held within 0..100; none for a text that is no number. */
export function shareOf(text: string): { sharePercent?: number } {
  const plain = text.replace('%', '').replace(',', '.').trim();
  const share = Number(plain);
  if (plain === '' || Number.isNaN(share)) return {};
  return { sharePercent: Math.min(100, Math.max(0, share)) };
}
