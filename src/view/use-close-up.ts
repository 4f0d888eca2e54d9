import { useEffect } from 'react';
import { useResults } from '../store/hooks.ts';
import { setView } from '../store/view-store.ts';
import { useDesk } from './desk-store.ts';

/** From this many screen pixels to a pixel of the usual fine picture, a finer one is worth its time. */
const CLOSE = 1.25;
/** How long the zoom must rest first, ms. */
const REST_MS = 250;

/** Asks for the picture at full size while the print is looked at closely. */
export function useCloseUp(): void {
  const pxPerMm = useDesk((state) => state.camera.pxPerMm);
  const fullPpi = useResults((state) => (state.picture ? state.picture.ppi * state.picture.scale : null));
  useEffect(() => {
    if (fullPpi === null) return;
    const closeUp = pxPerMm * 25.4 * devicePixelRatio > (fullPpi / 2) * CLOSE;
    const timer = setTimeout(() => setView({ closeUp }), REST_MS);
    return () => clearTimeout(timer);
  }, [pxPerMm, fullPpi]);
}
