import type { Plane } from './plane.ts';

export interface InkOnToothArgs {
  plate: Plane;
  /** Light of the sheet, bytes around 128: hills are lighter. */
  texture: Plane;
  /** Share of the ink that the highest hills lose, 0..1. */
  take: number;
  out: Plane;
}

/** A hill this much lighter than the mean counts as the highest, bytes. */
const HIGHEST = 48;

/** Thins ink where the sheet stands up, for rows `from..to`. */
export function inkOnTooth({ plate, texture, take, out }: InkOnToothArgs, from: number, to: number): void {
  const kept = Float32Array.from(
    { length: 256 },
    (_, light) => 1 - take * Math.min(1, Math.max(0, (light - 128) / HIGHEST)),
  );
  for (let i = from * plate.width; i < to * plate.width; i++)
    out.data[i] = plate.data[i]! * kept[texture.data[i]!]! + 0.5;
}
