import type { ComponentType } from 'react';
import type { Showing } from '../store/view-store.ts';

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

/** A key, or keys with modifiers, and what it does. */
export interface Shortcut {
  /** As in `KeyboardEvent.key`, with `Mod+`, `Shift+` or `Alt+` before it; Mod is Control or Command. */
  keys: string;
  name: string;
  run(): void;
}
