import type { ComponentType } from 'react';
import type { Showing } from '../store/view-store.ts';
import type { Stroke } from '../view/hand.ts';

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
  /** A region was clicked or touched, or Enter pressed where the keyboard stands. */
  tap(region: string): void;
  /** A drag begins; null when it is to move the print. */
  stroke(): Stroke | null;
}

/** A key, or keys with modifiers, and what it does. */
export interface Shortcut {
  /** As in `KeyboardEvent.key`, with `Mod+`, `Shift+` or `Alt+` before it; Mod is Control or Command. */
  keys: string;
  name: string;
  run(): void;
}
