import { type PointerEvent, type RefObject, useEffect, useMemo, useRef } from 'react';
import { setView } from '../store/view-store.ts';
import type { Point } from './camera.ts';
import { deskStore, panBy, zoomBy } from './desk-store.ts';
import { gestures, type HandPoint, type Touch } from './gesture.ts';
import { type Stroke, spotAt } from './hand.ts';
import { heldAs } from './held-as.ts';
import { markAt } from './region-tools/mark-under.ts';
import { holdAt, tapAt, toolTaken } from './tools.ts';
import { useSpaceDown } from './use-space-down.ts';

const MIDDLE_BUTTON = 1;

/** Gestures that act on the print. */
function printGestures() {
  let stroke: Stroke | null = null;
  return gestures({
    tap: tapAt,
    hold: holdAt,
    strokeStart: (at) => {
      stroke = toolTaken().stroke(at);
      return stroke !== null;
    },
    strokeTo: (from, to) => stroke?.to(from, to),
    strokeEnd: () => {
      stroke?.end();
      stroke = null;
    },
    strokeDrop: () => {
      stroke?.drop();
      stroke = null;
    },
    pan: panBy,
    pinch: zoomBy,
    moving: (handMoves) => setView({ handMoves }),
  });
}

/** What pointers do over the print. */
export function useHand(surface: RefObject<HTMLElement | null>) {
  const hand = useMemo(printGestures, []);
  const space = useSpaceDown();
  const box = useRef<DOMRect | null>(null);

  useEffect(() => () => setView({ handMoves: false, hovered: null }), []);

  return useMemo(() => {
    const place = (event: globalThis.PointerEvent): HandPoint => ({
      x: event.clientX - (box.current?.left ?? 0),
      y: event.clientY - (box.current?.top ?? 0),
      ...heldAs(event),
    });
    const touchOf = (event: globalThis.PointerEvent): Touch => ({
      id: event.pointerId,
      at: place(event),
      kind: event.pointerType === 'touch' || event.pointerType === 'pen' ? event.pointerType : 'mouse',
      alt: event.altKey,
      moves: event.button === MIDDLE_BUTTON || space.current,
    });
    const hover = (at: Point) => {
      const { mm, region } = spotAt(at);
      deskStore.setState({ pointer: at, cursor: null, crosshair: null, mark: markAt(mm) });
      setView({ hovered: region });
    };
    const measure = () => {
      box.current = surface.current?.getBoundingClientRect() ?? null;
    };
    return {
      onPointerDown: ({ nativeEvent: event }: PointerEvent) => {
        if (event.pointerType === 'mouse' && event.button > MIDDLE_BUTTON) return;
        measure();
        if (event.button === MIDDLE_BUTTON) event.preventDefault();
        surface.current?.focus({ preventScroll: true });
        surface.current?.setPointerCapture(event.pointerId);
        hover(place(event));
        hand.down(touchOf(event));
      },
      onPointerMove: ({ nativeEvent: event }: PointerEvent) => {
        if (!box.current || event.buttons === 0) measure();
        const all = event.getCoalescedEvents();
        for (const each of all.length > 0 ? all : [event]) hand.move(touchOf(each));
        hover(place(event));
      },
      onPointerUp: ({ nativeEvent: event }: PointerEvent) => hand.up(touchOf(event)),
      onPointerCancel: ({ nativeEvent: event }: PointerEvent) => hand.cancel(event.pointerId),
      onPointerLeave: ({ nativeEvent: event }: PointerEvent) => {
        if (event.pointerType === 'touch') return;
        deskStore.setState({ pointer: null, mark: null });
        setView({ hovered: null });
      },
    };
  }, [hand, space, surface]);
}
