import { type ReactNode, useEffect, useId, useRef } from 'react';
import { createPortal } from 'react-dom';
import { setView } from '../../store/view-store.ts';
import styles from './Sheet.module.css';
import { sheetTexts } from './strings.ts';

interface SheetProps {
  title: string;
  /** What stands beside the title. */
  tools?: ReactNode;
  children: ReactNode;
}

/** Where Escape has a meaning of its own. */
const ELSEWHERE = 'dialog, [role="dialog"], [role="menu"]';

const fold = () => setView({ sheet: null });

/** A sheet that lies over the print; takes the focus, and gives it back when it is folded away. */
export function Sheet({ title, tools, children }: SheetProps) {
  const sheet = useRef<HTMLElement>(null);
  const heading = useId();
  useEffect(() => {
    const before = document.activeElement;
    sheet.current?.focus();
    const listen = ({ key, target }: KeyboardEvent) => {
      const elsewhere = target instanceof HTMLElement && target.closest(ELSEWHERE) !== null;
      if (key === 'Escape' && !elsewhere) fold();
    };
    window.addEventListener('keydown', listen);
    return () => {
      window.removeEventListener('keydown', listen);
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  return createPortal(
    <section ref={sheet} className={styles.sheet} aria-labelledby={heading} tabIndex={-1}>
      <header className={styles.head}>
        <h2 id={heading}>{title}</h2>
        {tools}
        <button type="button" className={styles.fold} aria-label={sheetTexts.foldOf(title)} onClick={fold}>
          {sheetTexts.fold}
        </button>
      </header>
      <div className={styles.body}>{children}</div>
    </section>,
    document.querySelector('main') ?? document.body,
  );
}
