import { type KeyboardEvent, useId, useState } from 'react';
import styles from './Controls.module.css';

export interface TextInputProps {
  label: string;
  value: string;
  most: number;
  mayBeEmpty?: boolean;
  placeholder?: string;
  /** What to say when the text is empty or too long. */
  wrongText: string;
  /** Takes the text; a sentence when it cannot be. */
  commit(value: string): string | null;
}

/** An underlined text. Enter or leaving it commits; what cannot be stays, with a sentence on what is allowed. */
export function TextInput(props: TextInputProps) {
  const { label, value, most, mayBeEmpty = false, placeholder, wrongText, commit } = props;
  const [draft, setDraft] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const note = useId();
  const settle = () => {
    if (draft === null) return;
    const text = draft.trim();
    const fits = (text !== '' || mayBeEmpty) && text.length <= most;
    const refused = fits ? (text === value ? null : commit(text)) : wrongText;
    setWrong(refused);
    if (!refused) setDraft(null);
  };
  const press = (event: KeyboardEvent) => {
    if (event.key === 'Enter') settle();
    if (event.key !== 'Escape' || draft === null) return;
    event.stopPropagation();
    setDraft(null);
    setWrong(null);
  };
  return (
    <span className={styles.text}>
      <input
        type="text"
        autoComplete="off"
        aria-label={label}
        aria-invalid={wrong !== null}
        aria-describedby={wrong ? note : undefined}
        placeholder={placeholder}
        value={draft ?? value}
        onChange={({ target }) => setDraft(target.value)}
        onBlur={settle}
        onKeyDown={press}
      />
      {wrong && (
        <span id={note} role="alert" className={styles.wrong}>
          {wrong}
        </span>
      )}
    </span>
  );
}
