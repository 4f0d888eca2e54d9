import type { ReactNode } from 'react';
import type { Ink, Lab } from '../graph/inks.ts';
import { resolveInkLab } from '../ink/ink-lab.ts';
import { ColourControl } from './ColourControl.tsx';
import controls from './Controls.module.css';
import styles from './Docket.module.css';
import type { NumberField } from './fields.ts';
import { GrowthFields } from './GrowthFields.tsx';
import own from './InkSet.module.css';
import { NumberInput } from './NumberInput.tsx';
import { strings } from './strings.ts';
import { TextInput } from './TextInput.tsx';

const words = strings.inks;

const OPACITY: NumberField = {
  as: 'number',
  name: 'opacity',
  title: words.opacity,
  help: words.opacityHelp,
  usual: 0.5,
  least: 0,
  most: 100,
  whole: false,
  unit: '%',
  nullable: false,
};

export interface InkRowProps {
  ink: Ink;
  /** Changes the ink as one undo step. */
  change(change: Partial<Ink>, words: string, gesture?: string): string | null;
  /** Takes the ink out with its plates; null where it is the last. */
  remove: (() => void) | null;
  /** What else can be done with it. */
  children?: ReactNode;
}

/** One ink: name, colour, and behind a fold how it covers and gains. */
export function InkRow({ ink, change, remove, children }: InkRowProps) {
  const tell = (text: string) => `${ink.name} ${text}`;
  const percent = (share: number | undefined) =>
    share === undefined ? null : Number((share * 100).toFixed(2));
  return (
    <li className={own.ink}>
      <TextInput
        label={words.nameOf(ink.name)}
        value={ink.name}
        most={80}
        wrongText={words.noName}
        commit={(name) => change({ name }, name)}
      />
      <ColourControl
        label={words.colour(ink.name)}
        lab={resolveInkLab(ink)}
        commit={(lab, text, gesture) => change({ lab: lab as Lab }, tell(text), gesture)}
      />
      <details className={own.more}>
        <summary aria-label={words.details(ink.name)}>{words.more}</summary>
        <span className={controls.part}>
          <span aria-hidden="true">{words.opacity}</span>
          <NumberInput
            field={OPACITY}
            label={`${ink.name}, ${words.opacity.toLowerCase()}`}
            value={percent(ink.opacity)}
            commit={(value, text, gesture) =>
              change({ opacity: (value ?? 0) / 100 }, tell(`${words.opacity.toLowerCase()} ${text}`), gesture)
            }
          />
        </span>
        <p className={styles.note}>{words.opacityHelp}</p>
        <GrowthFields ink={ink} change={change} />
        <span className={controls.part}>
          <span aria-hidden="true">{words.note}</span>
          <TextInput
            label={`${ink.name}, ${words.note.toLowerCase()}`}
            value={ink.note ?? ''}
            most={400}
            mayBeEmpty
            wrongText={words.longNote}
            commit={(note) =>
              change({ note: note === '' ? undefined : note }, tell(words.note.toLowerCase()))
            }
          />
        </span>
        <button
          type="button"
          className={styles.word}
          disabled={!remove}
          title={remove ? undefined : words.last}
          aria-label={words.remove(ink.name)}
          onClick={() => remove?.()}
        >
          {words.removeShort}
        </button>
      </details>
      {children}
    </li>
  );
}
