import { edit, jobStore } from '../../store/job-store.ts';
import { handEdits, type MadeEdit, withEdit, withoutEdit } from '../../store/region-edits.ts';
import type { Point } from '../camera.ts';
import { say } from '../said-store.ts';
import { regionTexts as texts } from './strings.ts';

/** As many as the document takes. */
const MOST_EDITS = 5000;

/** A place as the document keeps it: to a micrometre. */
export function placeMm({ x, y }: Point): [number, number] {
  return [Math.round(x * 1000) / 1000, Math.round(y * 1000) / 1000];
}

/** Puts a hand edit to the others, as one step. */
export function makeEdit(made: MadeEdit): void {
  const { job } = jobStore.getState();
  if (!job) return;
  if (handEdits(job).length >= MOST_EDITS) {
    say(texts.said.full);
    return;
  }
  edit(texts.steps[made.does], (before) => withEdit(before, made));
  say(texts.made[made.does]);
}

/** Takes a hand edit back, as one step. */
export function takeEditBack(id: string): void {
  const { job } = jobStore.getState();
  const found = job && handEdits(job).find((each) => each.id === id);
  if (!found) return;
  edit(texts.takenBack[found.does], (before) => withoutEdit(before, id));
  say(texts.takenBack[found.does]);
}
