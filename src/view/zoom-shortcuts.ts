import type { Shortcut } from '../app/registry.ts';
import { fitSheet, zoomBy } from './desk-store.ts';
import { strings } from './strings.ts';

/** How much one step closer enlarges. */
export const ZOOM_STEP = Math.SQRT2;

const closer = () => zoomBy(ZOOM_STEP);
const further = () => zoomBy(1 / ZOOM_STEP);

/** Plus and minus as keyboards have them, and 0 for the whole print. */
export const zoomShortcuts: readonly Shortcut[] = [
  { keys: '0', name: strings.fitName, run: fitSheet },
  { keys: '+', name: strings.closer, run: closer },
  { keys: 'Shift++', name: strings.closer, run: closer },
  { keys: '=', name: strings.closer, run: closer },
  { keys: '-', name: strings.further, run: further },
];
