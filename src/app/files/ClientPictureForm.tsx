import { useEffect, useId, useState } from 'react';
import { useResults } from '../../store/hooks.ts';
import styles from './DeliverButton.module.css';
import sheet from './Dialog.module.css';
import { files as texts } from './strings.ts';

/** What the picture for a client is to be. */
export interface PictureWish {
  widthPx: number;
  ground: 'paper' | 'none';
}

const USUAL_WIDTH = 2000;
const LEAST_WIDTH = 16;
const MOST_WIDTH = 20_000;
const GROUNDS = ['paper', 'none'] as const;

/** Width and ground of the picture for a client; tells null while the width cannot be used. */
export function ClientPictureForm({ onWish }: { onWish(wish: PictureWish | null): void }) {
  const full = useResults(({ picture }) => (picture ? picture.width * picture.scale : null));
  const shape = useResults(({ picture }) => (picture ? picture.height / picture.width : null));
  const [text, setText] = useState(String(USUAL_WIDTH));
  const [ground, setGround] = useState<PictureWish['ground']>('paper');
  const field = useId();
  const width = Number(text.trim());
  const usable = Number.isInteger(width) && width >= LEAST_WIDTH && width <= MOST_WIDTH;
  useEffect(() => onWish(usable ? { widthPx: width, ground } : null), [onWish, usable, width, ground]);
  return (
    <>
      <div className={sheet.field}>
        <label htmlFor={field}>{texts.deliver.width}</label>
        <input
          id={field}
          inputMode="numeric"
          autoComplete="off"
          value={text}
          aria-invalid={!usable}
          onChange={(event) => setText(event.target.value)}
        />
        <span className={usable ? sheet.quiet : sheet.fault}>
          {usable ? told(width, full, shape) : texts.deliver.widthRange}
        </span>
      </div>
      <fieldset className={styles.grounds}>
        <legend className={sheet.quiet}>{texts.deliver.ground}</legend>
        {GROUNDS.map((each) => (
          <label key={each}>
            <input type="radio" name={field} checked={ground === each} onChange={() => setGround(each)} />
            {texts.deliver.grounds[each]}
          </label>
        ))}
      </fieldset>
    </>
  );
}

/** What becomes of a width; nothing before the print is known. */
function told(width: number, full: number | null, shape: number | null): string | null {
  if (full === null || shape === null) return null;
  return width > full ? texts.deliver.atMost(full) : texts.deliver.size(Math.round(width * shape));
}
