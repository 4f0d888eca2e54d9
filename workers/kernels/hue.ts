/** Hue is counted in slots of 15 degrees. */
export const SLOTS = 24;

/** Slot of a colour's hue, 0..SLOTS - 1; 0 for greys, which have none. */
export function hueSlot(red: number, green: number, blue: number): number {
  const most = Math.max(red, green, blue);
  const colour = most - Math.min(red, green, blue);
  if (colour === 0) return 0;
  const sextant =
    most === red
      ? (green - blue) / colour
      : most === green
        ? 2 + (blue - red) / colour
        : 4 + (red - green) / colour;
  return Math.floor((((sextant + 6) % 6) * SLOTS) / 6);
}
