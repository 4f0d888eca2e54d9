import type { ComponentType } from 'react';
import type { Showing } from '../store/view-store.ts';
import type { Point } from '../view/camera.ts';
import type { Spot, Stroke } from '../view/hand.ts';

/** Where a panel stands. */
export type Column = 'left' | 'right' | 'strip';

export interface Panel {
  id: string;
  title: string;
  column: Column;
  Component: ComponentType;
}

/** A way to look at the print, offered in the top bar. */
export interface View {
  id: Showing['view'];
  title: string;
  /** What to show when it is chosen; null while the document has nothing for it. */
  show(): Showing | null;
}

/** What a hand over the print does. */
export interface Tool {
  id: string;
  title: string;
  /** The key that takes it, as in `KeyboardEvent.key`. */
  key: string;
  /** What it does, as a sentence. */
  help: string;
  /** Where it is offered: always, or while regions are mended. */
  set: 'usual' | 'regions';
  /** What Alt with an arrow key goes to. */
  walks: 'regions' | 'marks';
  /** The print was clicked or touched, or Enter pressed where the keyboard stands. */
  tap(spot: Spot): void;
  /** A drag begins at a point of the desk; null when it is to move the print. */
  stroke(at: Point): Stroke | null;
}

/** A key, or keys with modifiers, and what it does. */
export interface Shortcut {
  /** As in `KeyboardEvent.key`, with `Mod+`, `Shift+` or `Alt+` before it; Mod is Control or Command. */
  keys: string;
  name: string;
  run(): void;
}
