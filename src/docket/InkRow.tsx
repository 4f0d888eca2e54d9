import type { Ink, Lab } from '../graph/inks.ts';
import { resolveInkLab } from '../ink/ink-lab.ts';
import { ColourControl } from './ColourControl.tsx';
import controls from './Controls.module.css';
import styles from './Docket.module.css';
import type { NumberField } from './fields.ts';
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

const GAIN: NumberField = {
  ...OPACITY,
  name: 'gain',
  title: words.gain,
  help: words.gainHelp,
  usual: undefined,
  most: 50,
  nullable: true,
};

export interface InkRowProps {
  ink: Ink;
  /** Changes the ink as one undo step. */
  change(change: Partial<Ink>, words: string, gesture?: string): string | null;
  /** Takes the ink out with its plates; null where it is the last. */
  remove: (() => void) | null;
}

/** One ink: name, colour, and behind a fold how it covers and gains. */
export function InkRow({ ink, change, remove }: InkRowProps) {
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
        <summary aria-label={words.details(ink.name)}>
          {words.opacity}, {words.gain.toLowerCase()}
        </summary>
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
        <span className={controls.part}>
          <span aria-hidden="true">{words.gain}</span>
          <NumberInput
            field={GAIN}
            label={`${ink.name}, ${words.gain.toLowerCase()}`}
            value={percent(ink.gain)}
            commit={(value, text, gesture) =>
              change(
                { gain: value === null ? undefined : value / 100 },
                tell(`${words.gain.toLowerCase()} ${text || strings.empty}`),
                gesture,
              )
            }
          />
        </span>
        <p className={styles.note}>{words.gainHelp}</p>
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
    </li>
  );
}
