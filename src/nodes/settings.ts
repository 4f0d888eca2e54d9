import { z } from 'zod';

/** What a form, the help page and the command line show of a setting. */
export type SettingNotes = {
  title: string;
  help: string;
};

type Unit = 'mm' | 'mm2' | '%' | 'deg' | 'ppi' | 'lpi';

/** A number in a unit, within a range. */
export function measure(unit: Unit, least: number, most: number, usual: number, notes: SettingNotes) {
  return z
    .number()
    .min(least)
    .max(most)
    .default(usual)
    .meta({ ...notes, unit });
}

/** The start of a random pattern: the same seed gives the same pattern. */
export function seed(usual: number) {
  const notes = { title: 'Seed', help: 'Another number gives another pattern of the same kind.' };
  return z.number().int().min(0).max(0xffffffff).default(usual).meta(notes);
}

/** One of a few words. */
export function choice<const Words extends readonly [string, ...string[]]>(
  words: Words,
  usual: Words[number],
  notes: SettingNotes,
) {
  return z.enum(words).default(usual).meta(notes);
}

/** Plate id -> value, for settings that may differ from plate to plate. */
export function perPlate<Value extends z.ZodType>(value: Value, notes: SettingNotes) {
  return z.record(z.string().max(64), value).default({}).meta(notes);
}

/** Which sheet of a run it is: what differs from sheet to sheet is drawn anew for each number. */
export function sheetNumber() {
  const notes = { title: 'Sheet', help: 'Which sheet of the run is shown: chance falls otherwise on each.' };
  return z.number().int().min(1).max(100_000).default(1).meta(notes);
}
