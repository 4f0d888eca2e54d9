import { useEffect } from 'react';
import { shortcuts } from './registries.ts';

/** The name of what was pressed, as shortcuts write it. */
function pressed(event: KeyboardEvent): string {
  const mod = event.ctrlKey || event.metaKey ? 'Mod+' : '';
  const shift = event.shiftKey ? 'Shift+' : '';
  const alt = event.altKey ? 'Alt+' : '';
  return `${mod}${shift}${alt}${event.key.length === 1 ? event.key.toLowerCase() : event.key}`;
}

/** Listens for every registered shortcut, except while a person types. */
export function useShortcuts(): void {
  useEffect(() => {
    const listen = (event: KeyboardEvent) => {
      const typing = event.target instanceof HTMLElement && event.target.matches('input, select, textarea');
      const shortcut = typing ? undefined : shortcuts.find(({ keys }) => keys === pressed(event));
      if (!shortcut) return;
      event.preventDefault();
      shortcut.run();
    };
    window.addEventListener('keydown', listen);
    return () => window.removeEventListener('keydown', listen);
  }, []);
}
