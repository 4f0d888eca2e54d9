import { deskStore } from '../../../view/desk-store.ts';

const point = (mark: string | null) => () => deskStore.setState({ mark });

/** Has a mark stand out on the print while a row of the panel is pointed at or in focus. */
export function pointAt(mark: string) {
  return {
    onPointerEnter: point(mark),
    onPointerLeave: point(null),
    onFocus: point(mark),
    onBlur: point(null),
  };
}
