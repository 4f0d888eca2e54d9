import { type ReactNode, useId, useLayoutEffect, useRef } from 'react';
import styles from './Dialog.module.css';

interface DialogProps {
  title: string;
  /** Escape, or a press beside the sheet. */
  onLetBe(): void;
  children: ReactNode;
}

/** A sheet over the window; what had the focus gets it back. */
export function Dialog({ title, onLetBe, children }: DialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const heading = useId();
  useLayoutEffect(() => {
    const sheet = dialog.current!;
    const before = document.activeElement;
    if (!sheet.open) sheet.showModal();
    return () => {
      sheet.close();
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  return (
    <dialog
      ref={dialog}
      className={styles.sheet}
      aria-labelledby={heading}
      onCancel={(event) => {
        event.preventDefault();
        onLetBe();
      }}
      onPointerDown={(event) => event.target === dialog.current && onLetBe()}
    >
      <div className={styles.inside}>
        <h2 id={heading} className={styles.title}>
          {title}
        </h2>
        {children}
      </div>
    </dialog>
  );
}
