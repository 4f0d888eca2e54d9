import { type RefObject, useEffect } from 'react';
import { panBy, zoomBy } from './desk-store.ts';

/** Natural growth a px of the wheel, and of two fingers on a trackpad (which come as Control and wheel). */
const WHEEL_GROWTH = 0.0018;
const PINCH_GROWTH = 0.01;
const LINE_PX = 32;

/** The wheel zooms about the pointer; with Shift, or rolled sideways, it moves the print. */
export function useWheel(surface: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const element = surface.current;
    if (!element) return;
    const roll = (event: WheelEvent) => {
      event.preventDefault();
      const unit = event.deltaMode === WheelEvent.DOM_DELTA_PIXEL ? 1 : LINE_PX;
      const [x, y] = [event.deltaX * unit, event.deltaY * unit];
      if (event.shiftKey || Math.abs(x) > Math.abs(y)) {
        panBy(event.shiftKey && x === 0 ? { x: -y, y: 0 } : { x: -x, y: -y });
        return;
      }
      const { left, top } = element.getBoundingClientRect();
      const growth = event.ctrlKey ? PINCH_GROWTH : WHEEL_GROWTH;
      zoomBy(Math.exp(-y * growth), { x: event.clientX - left, y: event.clientY - top });
    };
    element.addEventListener('wheel', roll, { passive: false });
    return () => element.removeEventListener('wheel', roll);
  }, [surface]);
}
