import type { Shortcut } from '../app/registry.ts';

export const recipeShortcuts: readonly Shortcut[] = [];
