import { type KeyboardEvent, useId, useState } from 'react';
import styles from './Controls.module.css';

export interface TextInputProps {
  label: string;
  value: string;
  most: number;
  /** What to say when the text is empty or too long. */
  wrongText: string;
  commit(value: string): void;
}

/** An underlined text. Enter or leaving it commits; what cannot be stays, with a sentence on what is allowed. */
export function TextInput({ label, value, most, wrongText, commit }: TextInputProps) {
  const [draft, setDraft] = useState<string | null>(null);
  const [wrong, setWrong] = useState(false);
  const note = useId();
  const settle = () => {
    if (draft === null) return;
    const text = draft.trim();
    const fits = text !== '' && text.length <= most;
    setWrong(!fits);
    if (!fits) return;
    setDraft(null);
    if (text !== value) commit(text);
  };
  const press = (event: KeyboardEvent) => {
    if (event.key === 'Enter') settle();
    if (event.key !== 'Escape' || draft === null) return;
    event.stopPropagation();
    setDraft(null);
    setWrong(false);
  };
  return (
    <span className={styles.text}>
      <input
        type="text"
        autoComplete="off"
        aria-label={label}
        aria-invalid={wrong}
        aria-describedby={wrong ? note : undefined}
        value={draft ?? value}
        onChange={({ target }) => setDraft(target.value)}
        onBlur={settle}
        onKeyDown={press}
      />
      {wrong && (
        <span id={note} role="alert" className={styles.wrong}>
          {wrongText}
        </span>
      )}
    </span>
  );
}
