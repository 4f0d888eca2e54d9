import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import {
  ACTUAL_PX_PER_MM,
  type Camera,
  fitOnDesk,
  type Point,
  pan,
  reveal,
  type Size,
  toDesk,
  zoom,
} from './camera.ts';

/** How the sheet lies on the desk. */
export interface DeskState {
  camera: Camera;
  /** Size of the print view, px. */
  desk: Size;
  /** Size of the sheet, mm; null before a picture came. */
  sheet: Size | null;
  /** The whole sheet stays in view when the window changes. */
  fitted: boolean;
  /** Place under the pointer, px. */
  pointer: Point | null;
  /** Id of the region that the keyboard stands on. */
  cursor: string | null;
  /** Place that the keyboard stands at, mm. */
  crosshair: Point | null;
  /** Key of the wall, gap or hand edit that is pointed at. */
  mark: string | null;
}

export const deskStore = createStore<DeskState>(() => ({
  camera: { x: 0, y: 0, pxPerMm: ACTUAL_PX_PER_MM },
  desk: { width: 0, height: 0 },
  sheet: null,
  fitted: true,
  pointer: null,
  cursor: null,
  crosshair: null,
  mark: null,
}));

export function useDesk<Part>(select: (state: DeskState) => Part): Part {
  return useStore(deskStore, select);
}

const middleOf = ({ width, height }: Size): Point => ({ x: width / 2, y: height / 2 });

function move(change: (state: DeskState & { sheet: Size }) => Camera): void {
  deskStore.setState((state) => {
    const { sheet } = state;
    return sheet ? { camera: change({ ...state, sheet }), fitted: false } : {};
  });
}

/** Tells the size of the sheet or of the view. A sheet that was wholly in view stays so. */
export function resize(change: Partial<Pick<DeskState, 'sheet' | 'desk'>>): void {
  deskStore.setState((state) => {
    const { sheet, desk, fitted, camera } = { ...state, ...change };
    if (!sheet || desk.width === 0 || desk.height === 0) return change;
    return {
      ...change,
      camera: fitted ? fitOnDesk(sheet, desk) : pan(camera, { x: 0, y: 0 }, sheet, desk),
    };
  });
}

/** Shows the whole sheet. */
export function fitSheet(): void {
  deskStore.setState({ fitted: true });
  resize({});
}

/** Zooms about a point of the view, by default its middle. */
export function zoomBy(factor: number, about?: Point): void {
  move(({ camera, sheet, desk }) => zoom(camera, factor, about ?? middleOf(desk), sheet, desk));
}

/** Shows the sheet as large as it prints. */
export function zoomToActual(): void {
  zoomBy(ACTUAL_PX_PER_MM / deskStore.getState().camera.pxPerMm);
}

export function panBy(by: Point): void {
  move(({ camera, sheet, desk }) => pan(camera, by, sheet, desk));
}

/** Id of the element that takes the print's keys. */
export const PRINT_ID = 'print';

/** Gives the print the keys. */
export function focusPrint(): void {
  document.getElementById(PRINT_ID)?.focus({ preventScroll: true });
}

/** Has a place of the sheet in the middle of the view, so close that as many mm of it fit. */
export function showPlace(mm: Point, spanMm: number): void {
  move(({ camera, sheet, desk }) => {
    const wanted = Math.min(desk.width, desk.height) / spanMm;
    const close = zoom(camera, Math.max(1, wanted / camera.pxPerMm), middleOf(desk), sheet, desk);
    const { x, y } = toDesk(close, mm);
    const middle = middleOf(desk);
    return pan(close, { x: middle.x - x, y: middle.y - y }, sheet, desk);
  });
}

/** Brings a place of the sheet, mm, into view. */
export function revealPlace(mm: Point): void {
  const { camera, sheet, desk } = deskStore.getState();
  if (sheet && reveal(camera, mm, sheet, desk) !== camera)
    move((state) => reveal(state.camera, mm, state.sheet, state.desk));
}
