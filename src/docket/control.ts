/**
 * Takes a new value from a control.
 *
 * @param words the value as the undo list names it
 * @param gesture key of the drag or run of presses it belongs to; steps of one key are undone together
 * @returns null, or why the value cannot be, as a sentence
 */
export type Commit = (value: unknown, words: string, gesture?: string) => string | null;

/** What every control of a setting gets. */
export interface ControlProps<Shape> {
  field: Shape;
  /** Name of the control for those who do not see where it stands. */
  label: string;
  /** The setting as it is, the usual value filled in. */
  value: unknown;
  /** Id of the node whose plates matter. */
  node: string;
  /** Id of the text that says what the setting does. */
  describedBy?: string;
  commit: Commit;
}

/** A choice as a person reads it: `knocked-out` is "knocked out". */
export function spoken(word: string): string {
  return word.replaceAll('-', ' ');
}
