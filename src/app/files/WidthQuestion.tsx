import { type FormEvent, useId, useState } from 'react';
import styles from './Dialog.module.css';
import { Dialog } from './Dialog.tsx';
import type { Question } from './files-store.ts';
import { files as texts } from './strings.ts';

const LEAST_MM = 1;
const MOST_MM = 5000;

/** A width as typed, mm, with a point or a comma; null when it is none that prints. */
function widthOf(text: string): number | null {
  const width = Number(text.trim().replace(',', '.'));
  return text.trim() !== '' && width >= LEAST_MM && width <= MOST_MM ? width : null;
}

/** Asks how wide a drawing prints that does not say so itself. */
export function WidthQuestion({ question }: { question: Extract<Question, { kind: 'width' }> }) {
  const { file, pixels, guessMm, shape, answer } = question;
  const [text, setText] = useState(String(guessMm));
  const width = widthOf(text);
  const field = useId();
  const detail = useId();
  const go = (event: FormEvent) => {
    event.preventDefault();
    if (width !== null) answer(width);
  };
  return (
    <Dialog title={texts.width.title} onLetBe={() => answer(null)}>
      <p>
        {texts.width.unknown(file)}
        {pixels && <span className={styles.quiet}> {texts.width.pixels(...pixels)}</span>}
      </p>
      <form onSubmit={go} style={{ display: 'contents' }}>
        <div>
          <label htmlFor={field} className={styles.quiet}>
            {texts.width.label}
          </label>
          <div className={styles.field}>
            <input
              id={field}
              inputMode="decimal"
              autoComplete="off"
              value={text}
              aria-invalid={width === null}
              aria-describedby={detail}
              onFocus={(event) => event.target.select()}
              onChange={(event) => setText(event.target.value)}
            />
            <span>{texts.width.unit}</span>
            <span id={detail} className={width === null ? styles.fault : styles.quiet}>
              {width === null ? texts.width.range : consequences(width, shape, pixels)}
            </span>
          </div>
        </div>
        <div className={styles.actions}>
          <button type="button" className={styles.plain} onClick={() => answer(null)}>
            {texts.cancel}
          </button>
          <button type="submit" className={styles.main} disabled={width === null}>
            {texts.width.go}
          </button>
        </div>
      </form>
    </Dialog>
  );
}

function consequences(width: number, shape: number, pixels: [number, number] | null): string {
  const height = texts.width.height(width * shape);
  return pixels ? `${height}, ${texts.width.ppi((pixels[0] * 25.4) / width)}` : height;
}
