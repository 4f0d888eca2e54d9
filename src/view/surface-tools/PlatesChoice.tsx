import { useRef } from 'react';
import { useJob } from '../../store/hooks.ts';
import { platesOf } from '../plates-of.ts';
import styles from './SurfaceRow.module.css';
import { surfaceTexts } from './strings.ts';

const texts = surfaceTexts.marks;

/** Which plates a stroke goes through: all while none is chosen. */
export function PlatesChoice({
  value,
  onChange,
}: {
  value: readonly string[];
  onChange(plates: string[]): void;
}) {
  const job = useJob((state) => state);
  const box = useRef<HTMLDetailsElement>(null);
  const plates = platesOf(job);
  const named = plates.filter(({ id }) => value.includes(id));
  const [first] = named;
  const summary =
    named.length === 0 || !first
      ? texts.allPlates
      : named.length === 1
        ? first.ink
        : texts.platesCount(named.length);
  const toggle = (id: string) =>
    onChange(value.includes(id) ? value.filter((each) => each !== id) : [...value, id]);
  return (
    <details
      ref={box}
      className={styles.plates}
      onBlur={({ relatedTarget }) => {
        if (box.current && !box.current.contains(relatedTarget)) box.current.open = false;
      }}
    >
      <summary aria-label={`${texts.plates}: ${summary}`}>{summary}</summary>
      <fieldset aria-label={texts.plates}>
        <label>
          <input type="checkbox" checked={named.length === 0} onChange={() => onChange([])} />
          {texts.allPlates}
        </label>
        {plates.map(({ id, ink, colour }) => (
          <label key={id}>
            <input type="checkbox" checked={value.includes(id)} onChange={() => toggle(id)} />
            <span className={styles.chip} style={{ background: colour }} aria-hidden="true" />
            {ink}
          </label>
        ))}
      </fieldset>
    </details>
  );
}
