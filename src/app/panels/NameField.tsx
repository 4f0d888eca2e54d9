import { useEffect, useRef, useState } from 'react';
import styles from './NameField.module.css';

interface NameFieldProps {
  label: string;
  name: string;
  onKeep(name: string): void;
  /** Called once, whether the name was kept or not. */
  onEnd(): void;
}

/** The name while it is changed: Enter or leaving keeps it, Escape lets it be. */
export function NameField({ label, name, onKeep, onEnd }: NameFieldProps) {
  const [text, setText] = useState(name);
  const done = useRef(false);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current!.focus(), []);
  const end = (keep: boolean) => {
    if (done.current) return;
    done.current = true;
    if (keep) onKeep(text);
    onEnd();
  };
  return (
    <input
      className={styles.field}
      aria-label={label}
      value={text}
      ref={field}
      onFocus={(event) => event.target.select()}
      onChange={(event) => setText(event.target.value)}
      onBlur={() => end(true)}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' && event.key !== 'Escape') return;
        event.preventDefault();
        end(event.key === 'Enter');
      }}
    />
  );
}
