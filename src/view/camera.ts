/** A length across and one down: CSS pixels on the desk, or mm on the sheet, as the name says. */
export interface Point {
  x: number;
  y: number;
}

export interface Size {
  width: number;
  height: number;
}

/** Where the sheet lies on the desk: its top left corner in CSS pixels, and how large a mm is. */
export interface Camera {
  x: number;
  y: number;
  pxPerMm: number;
}

/** CSS defines 96 pixels an inch. */
export const ACTUAL_PX_PER_MM = 96 / 25.4;

const LEAST_SHARE = 0.05;
const GREATEST_SHARE = 32;
/** So much of the sheet stays on the desk, px. */
const KEPT_PX = 72;
const FIT_MARGIN_PX = 40;

/** The place on the sheet under a point of the desk. */
export function toMm({ x, y, pxPerMm }: Camera, point: Point): Point {
  return { x: (point.x - x) / pxPerMm, y: (point.y - y) / pxPerMm };
}

/** The point of the desk over a place on the sheet. */
export function toDesk({ x, y, pxPerMm }: Camera, mm: Point): Point {
  return { x: x + mm.x * pxPerMm, y: y + mm.y * pxPerMm };
}

/** The whole sheet in the middle of the desk, with a margin. */
export function fitOnDesk(sheet: Size, desk: Size): Camera {
  const margin = Math.min(FIT_MARGIN_PX, desk.width / 8, desk.height / 8);
  const across = (desk.width - 2 * margin) / sheet.width;
  const down = (desk.height - 2 * margin) / sheet.height;
  const pxPerMm = Math.max(Math.min(across, down), Number.EPSILON);
  return {
    x: (desk.width - sheet.width * pxPerMm) / 2,
    y: (desk.height - sheet.height * pxPerMm) / 2,
    pxPerMm,
  };
}

/** Moved over the desk, but never out of reach. */
export function pan(camera: Camera, by: Point, sheet: Size, desk: Size): Camera {
  return within({ ...camera, x: camera.x + by.x, y: camera.y + by.y }, sheet, desk);
}

/** Zoomed by a factor about a point of the desk, which keeps its place on the sheet. */
export function zoom(camera: Camera, factor: number, about: Point, sheet: Size, desk: Size): Camera {
  const least = Math.min(LEAST_SHARE * ACTUAL_PX_PER_MM, fitOnDesk(sheet, desk).pxPerMm / 2);
  const greatest = GREATEST_SHARE * ACTUAL_PX_PER_MM;
  const pxPerMm = Math.min(greatest, Math.max(least, camera.pxPerMm * factor));
  const grows = pxPerMm / camera.pxPerMm;
  const x = about.x - (about.x - camera.x) * grows;
  const y = about.y - (about.y - camera.y) * grows;
  return within({ x, y, pxPerMm }, sheet, desk);
}

/** Moved no more than it takes to have a place of the sheet on the desk, a margin from its edges. */
export function reveal(camera: Camera, mm: Point, sheet: Size, desk: Size): Camera {
  const { x, y } = toDesk(camera, mm);
  const by = { x: shortfall(x, desk.width), y: shortfall(y, desk.height) };
  return by.x === 0 && by.y === 0 ? camera : pan(camera, by, sheet, desk);
}

function shortfall(at: number, length: number): number {
  const margin = Math.min(KEPT_PX, length / 4);
  return Math.min(length - margin, Math.max(margin, at)) - at;
}

function within(camera: Camera, sheet: Size, desk: Size): Camera {
  return {
    ...camera,
    x: between(camera.x, sheet.width * camera.pxPerMm, desk.width),
    y: between(camera.y, sheet.height * camera.pxPerMm, desk.height),
  };
}

/** A start at which a length still shows on the desk. */
function between(start: number, length: number, desk: number): number {
  const kept = Math.min(KEPT_PX, length, desk);
  return Math.min(desk - kept, Math.max(kept - length, start));
}
