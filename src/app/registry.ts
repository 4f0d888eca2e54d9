import type { ComponentType } from 'react';
import type { Showing } from '../store/view-store.ts';
import type { HandPoint } from '../view/gesture.ts';
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

/** What a tool works at: recipes, the regions themselves, or what lies over them. */
export type ToolSet = 'usual' | 'regions' | 'areas' | 'marks' | 'fades' | 'nudge';

/** What a hand over the print does. */
export interface Tool {
  id: string;
  title: string;
  /** The key that takes it, as in `KeyboardEvent.key`. */
  key: string;
  /** What it does, as a sentence. */
  help: string;
  /** Where it is offered: always, or while that is worked at. */
  set: ToolSet;
  /** What Alt with an arrow key goes to. */
  walks: 'regions' | 'marks';
  /** The print was clicked or touched, or Enter pressed where the keyboard stands. */
  tap(spot: Spot): void;
  /** A drag begins at a point of the desk; null when it is to move the print. */
  stroke(at: HandPoint): Stroke | null;
  /** Enter was pressed where the keyboard stands; absent where that does what a click does. */
  enter?(spot: Spot): void;
  /** A key was pressed over the print. @returns whether it means something to the tool */
  press?(key: string, far: boolean): boolean;
  /** It is taken. */
  taken?(): void;
}

/** A key, or keys with modifiers, and what it does. */
export interface Shortcut {
  /** As in `KeyboardEvent.key`, with `Mod+`, `Shift+` or `Alt+` before it; Mod is Control or Command. */
  keys: string;
  name: string;
  run(): void;
}
