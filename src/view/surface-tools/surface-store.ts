import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { HandMark } from '../../nodes/hand-marks.ts';

/** What a stroke is drawn with. */
export type Brush = Pick<HandMark, 'does' | 'plates' | 'tintPercent' | 'widthMm' | 'edge'>;

/** A stroke under way: x, y in mm and share of the width, 0..1. */
export type DraftPoint = [x: number, y: number, press: number];

export interface SurfaceState {
  brush: Brush;
  /** How far from its path a new line near reaches, mm. */
  nearMm: number;
  /** Key of the chosen shape, stroke or fade. */
  chosen: string | null;
  /** Id of the plate that is nudged; the last one where it is null. */
  plate: string | null;
  draft: readonly DraftPoint[];
}

export const surfaceStore = createStore<SurfaceState>(() => ({
  brush: { does: 'lift', plates: [], tintPercent: 100, widthMm: 1.5, edge: 'clean' },
  nearMm: 3,
  chosen: null,
  plate: null,
  draft: [],
}));

export function useSurface<Part>(select: (state: SurfaceState) => Part): Part {
  return useStore(surfaceStore, select);
}

let strokes = 0;

/** A key for the undo steps of one drag. */
export function newDrag(): string {
  strokes++;
  return `surface ${strokes}`;
}
