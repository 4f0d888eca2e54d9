import type { Camera, Size } from '../camera.ts';
import { middleOf } from './edit-places.ts';
import type { Mark } from './marks.ts';
import { thinOut } from './thin-out.ts';

/** Nearer than this to another, a wall or gap is drawn as a speck, px. */
const APART_PX = 30;
/** Of gaps, the likeliest first, so many are drawn in full on a view of the whole sheet, and thrice as many at all. */
const MOST_GAPS = 40;
const SPECKS_TO_ONE = 3;

/** How the sheet lies on the desk. */
export interface Lying {
  camera: Camera;
  desk: Size;
  sheet: Size | null;
}

/** How many gaps are drawn in full: more the more of the sheet lies outside the view. */
function gapsInFull({ camera, desk, sheet }: Lying): number {
  if (!sheet || desk.width * desk.height === 0) return MOST_GAPS;
  const views = (sheet.width * sheet.height * camera.pxPerMm ** 2) / (desk.width * desk.height);
  return MOST_GAPS * Math.max(1, views);
}

/** Marks that are worth seeing at this size: all but the least of many gaps. */
export function seenMarks(marks: readonly Mark[], lying: Lying): Mark[] {
  const most = gapsInFull(lying) * SPECKS_TO_ONE;
  return marks.filter((mark) => mark.is !== 'gap' || mark.rank < most);
}

/** Seen marks by how they are drawn: by hand always in full, the others as far as there is room. */
export function bySize(seen: readonly Mark[], lying: Lying): { full: Mark[]; specks: Mark[] } {
  const most = gapsInFull(lying);
  const byHand = seen.filter(isByHand);
  const found = seen.filter((mark) => !isByHand(mark));
  const small = found.filter((mark) => mark.is === 'gap' && mark.rank >= most);
  const large = found.filter((mark) => mark.is !== 'gap' || mark.rank < most);
  const { apart, crowded } = thinOut(large, ({ path }) => middleOf(path), APART_PX / lying.camera.pxPerMm);
  return { full: [...apart, ...byHand], specks: [...small, ...crowded] };
}

function isByHand(mark: Mark): boolean {
  return mark.is === 'edit' || (mark.is === 'wall' && mark.openedBy !== null);
}
