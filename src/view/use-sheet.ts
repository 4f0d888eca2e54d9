import { type RefObject, useEffect, useRef } from 'react';
import { useJobState, useResults } from '../store/hooks.ts';
import { deskStore, fitSheet, resize } from './desk-store.ts';

/** Keeps the desk informed of the size of the view and of the sheet; shows each newly opened job whole. */
export function useSheet(surface: RefObject<HTMLElement | null>): void {
  const opened = useJobState((state) => state.opened);
  const picture = useResults((state) => state.picture);
  const map = useResults((state) => state.regions);
  const fittedFor = useRef(-1);

  useEffect(() => {
    const element = surface.current;
    if (!element) return;
    const observer = new ResizeObserver(() => {
      resize({ desk: { width: element.clientWidth, height: element.clientHeight } });
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [surface]);

  useEffect(() => {
    if (!picture) return;
    const inMm = (px: number) => (px * 25.4) / picture.ppi;
    const size = { width: inMm(picture.width), height: inMm(picture.height) };
    const exact =
      map && Math.abs(map.mm[0] - size.width) < inMm(1) && Math.abs(map.mm[1] - size.height) < inMm(1);
    resize({ sheet: exact ? { width: map.mm[0], height: map.mm[1] } : size });
  }, [picture, map]);

  useEffect(() => {
    if (!picture || fittedFor.current === opened) return;
    fittedFor.current = opened;
    deskStore.setState({ cursor: null });
    fitSheet();
  }, [picture, opened]);
}
