import { useState } from 'react';
import own from './KeptRow.module.css';
import { strings } from './strings.ts';

const LONGEST_NAME = 80;

/** The name under which settings are to be kept: Enter keeps, Escape lets be. */
export function NewName({ onKeep, onEnd }: { onKeep(name: string): void; onEnd(): void }) {
  const [text, setText] = useState('');
  const keep = () => {
    const name = text.trim().slice(0, LONGEST_NAME);
    if (name !== '') onKeep(name);
    onEnd();
  };
  return (
    <input
      className={own.name}
      aria-label={strings.kept.name}
      placeholder={strings.kept.name}
      value={text}
      autoComplete="off"
      ref={(field) => field?.focus()}
      onChange={({ target }) => setText(target.value)}
      onBlur={keep}
      onKeyDown={(event) => {
        if (event.key === 'Enter') keep();
        if (event.key === 'Escape') onEnd();
      }}
    />
  );
}
