import { type KeyboardEvent, useId, useRef, useState } from 'react';
import { handMovesUntil, newGesture } from './apply.ts';
import styles from './Controls.module.css';
import type { NumberField } from './fields.ts';
import { readNumber, shown, shownNumber, shownUnit, snapped, stepOf } from './numbers.ts';

export interface NumberInputProps {
  field: NumberField;
  label: string;
  value: number | null;
  /** What an empty input stands for. */
  placeholder?: string;
  describedBy?: string;
  /** Takes the new value; a sentence when it cannot be. */
  commit(value: number | null, words: string, gesture: string): string | null;
}

/**
 * An underlined number with its unit. Enter or leaving it commits; arrow keys step, with Shift ten times as far, as
 * one undo step while the focus stays. A text that cannot be read stays, with a sentence on what is allowed.
 */
export function NumberInput({ field, label, value, placeholder, describedBy, commit }: NumberInputProps) {
  const [draft, setDraft] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const gesture = useRef('');
  const note = useId();
  const written = value === null ? '' : shownNumber(value);

  const settle = (next: number | null) => {
    const words = next === null ? '' : shown(next, field.unit);
    const refused = next === value ? null : commit(next, words, gesture.current);
    setWrong(refused);
    if (!refused) setDraft(null);
  };
  const read = () => {
    if (draft === null) return;
    const result = readNumber(field, draft);
    if ('wrong' in result) setWrong(result.wrong);
    else settle(result.value);
  };
  const step = (event: KeyboardEvent, direction: number) => {
    event.preventDefault();
    const from = draft === null ? { value } : readNumber(field, draft);
    if ('wrong' in from) return;
    if (!event.repeat) handMovesUntil('keyup');
    const far = event.shiftKey ? 10 : 1;
    const usual = typeof field.usual === 'number' ? field.usual : Math.max(0, field.least);
    settle(snapped(field, (from.value ?? usual) + direction * far * stepOf(field)));
  };
  const press = (event: KeyboardEvent) => {
    if (event.key === 'Enter') read();
    if (event.key === 'ArrowUp') step(event, 1);
    if (event.key === 'ArrowDown') step(event, -1);
    if (event.key !== 'Escape' || draft === null) return;
    event.stopPropagation();
    setDraft(null);
    setWrong(null);
  };

  return (
    <span className={styles.number}>
      <span className={styles.figure} data-wrong={wrong !== null}>
        <input
          type="text"
          inputMode="decimal"
          autoComplete="off"
          aria-label={field.unit ? `${label}, ${shownUnit(field.unit)}` : label}
          aria-invalid={wrong !== null}
          aria-describedby={wrong ? note : describedBy}
          value={draft ?? written}
          placeholder={placeholder}
          onFocus={(event) => {
            gesture.current = newGesture();
            event.target.select();
          }}
          onChange={(event) => {
            setDraft(event.target.value);
            setWrong(null);
          }}
          onBlur={read}
          onKeyDown={press}
        />
        <span className={styles.unit} aria-hidden="true">
          {shownUnit(field.unit)}
        </span>
      </span>
      {wrong && (
        <span id={note} role="alert" className={styles.wrong}>
          {wrong}
        </span>
      )}
    </span>
  );
}
