import { type RefObject, useEffect, useRef } from 'react';

const TAKES_SPACE = 'button, a, input, select, textarea, summary, [contenteditable]';

/** Whether the space bar is held, except where it presses a button or writes. */
export function useSpaceDown(): RefObject<boolean> {
  const down = useRef(false);
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const taken = event.target instanceof Element && event.target.closest(TAKES_SPACE) !== null;
      if (event.key !== ' ' || taken) return;
      event.preventDefault();
      down.current = true;
    };
    const release = (event: KeyboardEvent) => {
      if (event.key === ' ') down.current = false;
    };
    const leave = () => {
      down.current = false;
    };
    window.addEventListener('keydown', press);
    window.addEventListener('keyup', release);
    window.addEventListener('blur', leave);
    return () => {
      window.removeEventListener('keydown', press);
      window.removeEventListener('keyup', release);
      window.removeEventListener('blur', leave);
    };
  }, []);
  return down;
}
