import { viewStore } from '../../store/view-store.ts';
import type { Point } from '../camera.ts';
import { deskStore } from '../desk-store.ts';
import { reachMm } from '../hand.ts';
import { nearestMark } from './marks.ts';
import { actsOn } from './place-tools.ts';
import { regionsShow } from './region-tools.ts';
import { seenMarks } from './seen-marks.ts';
import { shownMarks } from './shown-marks.ts';

/** Marks that a click would not change are told of only from this near, px. */
const LOOKED_AT_PX = 9;

/** Key of the mark at a place of the sheet: what a click would act on, or else what lies right there. */
export function markAt(mm: Point): string | null {
  if (!regionsShow()) return null;
  const { tool } = viewStore.getState();
  const marks = seenMarks(shownMarks(), deskStore.getState());
  const mark =
    nearestMark(marks, mm, reachMm(), (each) => actsOn(tool, each)) ??
    nearestMark(marks, mm, reachMm(LOOKED_AT_PX));
  return mark?.key ?? null;
}
