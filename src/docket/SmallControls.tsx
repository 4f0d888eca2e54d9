import styles from './Controls.module.css';
import { type ControlProps, spoken } from './control.ts';
import shared from './Docket.module.css';
import type { ChoiceField, NumberField, PlainField } from './fields.ts';
import { NumberInput } from './NumberInput.tsx';
import { Slider } from './Slider.tsx';
import { strings } from './strings.ts';
import { TextInput } from './TextInput.tsx';

/** A number: its input, and a slider where it has a range and always a value. */
export function NumberControl({ field, label, value, describedBy, commit }: ControlProps<NumberField>) {
  const number = typeof value === 'number' ? value : null;
  return (
    <>
      <NumberInput field={field} label={label} value={number} describedBy={describedBy} commit={commit} />
      {number !== null && !field.nullable && <Slider field={field} value={number} commit={commit} />}
    </>
  );
}

/** A few words, one of them chosen. */
export function ChoiceControl({ field, label, value, describedBy, commit }: ControlProps<ChoiceField>) {
  return (
    <fieldset className={styles.choice} aria-label={label} aria-describedby={describedBy}>
      {field.words.map((word) => (
        <button
          key={word}
          type="button"
          aria-pressed={word === value}
          onClick={() => word !== value && commit(word, spoken(word))}
        >
          {spoken(word)}
        </button>
      ))}
    </fieldset>
  );
}

/** Yes or no. */
export function YesNoControl({ label, value, describedBy, commit }: ControlProps<PlainField>) {
  return (
    <label className={styles.yesNo}>
      <input
        type="checkbox"
        aria-label={label}
        aria-describedby={describedBy}
        checked={value === true}
        onChange={({ target }) => commit(target.checked, target.checked ? strings.yes : strings.no)}
      />
      {value === true ? strings.yes : strings.no}
    </label>
  );
}

/** A seed: the number, and a button for another pattern. */
export function SeedControl({ field, label, value, describedBy, commit }: ControlProps<PlainField>) {
  const seed = typeof value === 'number' ? value : 1;
  const number: NumberField = {
    ...field,
    as: 'number',
    least: 0,
    most: 0xffffffff,
    whole: true,
    unit: '',
    nullable: false,
  };
  const another = Math.floor(Math.random() * 9999) + 1;
  return (
    <span className={styles.seed}>
      <button
        type="button"
        className={shared.word}
        aria-label={strings.anotherOf(field.title)}
        onClick={() => commit(another === seed ? seed + 1 : another, String(another))}
      >
        {strings.another}
      </button>
      <NumberInput field={number} label={label} value={seed} describedBy={describedBy} commit={commit} />
    </span>
  );
}

const LONGEST_TEXT = 120;

/** A line of text. */
export function TextControl({ label, value, commit }: ControlProps<PlainField>) {
  return (
    <TextInput
      label={label}
      value={typeof value === 'string' ? value : ''}
      most={LONGEST_TEXT}
      wrongText={strings.textLength(LONGEST_TEXT)}
      commit={(text) => commit(text, text)}
    />
  );
}
