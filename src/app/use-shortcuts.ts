import { useEffect } from 'react';
import { shortcuts } from './registries.ts';

/** The name of what was pressed, as shortcuts write it. */
function pressed(event: KeyboardEvent): string {
  const mod = event.ctrlKey || event.metaKey ? 'Mod+' : '';
  const shift = event.shiftKey ? 'Shift+' : '';
  const alt = event.altKey ? 'Alt+' : '';
  return `${mod}${shift}${alt}${event.key.length === 1 ? event.key.toLowerCase() : event.key}`;
}

/** Keys that a text field needs itself: all without Control, and its own undo. */
function meantForField(event: KeyboardEvent): boolean {
  const typing = event.target instanceof HTMLElement && event.target.matches('input, select, textarea');
  const keys = pressed(event);
  return typing && (!keys.startsWith('Mod+') || /z$/.test(keys));
}

/** Listens for every registered shortcut, except for keys that a text field needs while a person types. */
export function useShortcuts(): void {
  useEffect(() => {
    const listen = (event: KeyboardEvent) => {
      const shortcut = meantForField(event)
        ? undefined
        : shortcuts.find(({ keys }) => keys === pressed(event));
      if (!shortcut) return;
      event.preventDefault();
      shortcut.run();
    };
    window.addEventListener('keydown', listen);
    return () => window.removeEventListener('keydown', listen);
  }, []);
}
