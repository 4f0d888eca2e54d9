import { useRef } from 'react';
import { type Lab, labSchema } from '../graph/inks.ts';
import { labOfXyz } from '../ink/lab.ts';
import { screenOf } from '../ink/screen.ts';
import { xyzOfHex } from '../ink/srgb.ts';
import { newGesture } from './apply.ts';
import styles from './Controls.module.css';
import type { Commit } from './control.ts';
import shared from './Docket.module.css';
import type { NumberField } from './fields.ts';
import { NumberInput } from './NumberInput.tsx';
import { strings } from './strings.ts';

const RANGES: readonly [least: number, most: number][] = [
  [0, 150],
  [-200, 200],
  [-200, 200],
];

/** A number field for one of L, a, b. */
function axis(at: number): NumberField {
  const [least, most] = RANGES[at]!;
  const title = strings.lab[at]!;
  const named = { name: title, title, help: strings.labHelp[at]!, usual: 0 };
  return { ...named, as: 'number', least, most, whole: false, unit: '', nullable: false };
}

const AXES = [0, 1, 2].map(axis);

/** Lab of a screen colour, to a tenth. */
export function labOfHex(hex: string): Lab {
  const tenths = labOfXyz(xyzOfHex(hex)).map((value) => Math.round(value * 10) / 10 + 0);
  return labSchema.parse(tenths);
}

export interface ColourProps {
  label: string;
  lab: Lab;
  commit: Commit;
}

/** A colour: the screen's picker and Lab by number. Says so when the screen cannot show it. */
export function ColourControl({ label, lab, commit }: ColourProps) {
  const { hex, onScreen } = screenOf(lab);
  const tell = (next: Lab) => next.map((value) => Number(value.toFixed(1))).join(' / ');
  const gesture = useRef('');
  return (
    <span className={styles.colour}>
      <input
        type="color"
        aria-label={strings.screenColour(label)}
        value={hex}
        onChange={({ target }) => {
          const next = labOfHex(target.value);
          commit(next, tell(next), gesture.current);
        }}
        onFocus={() => {
          gesture.current = newGesture();
        }}
      />
      <fieldset className={styles.lab} aria-label={label}>
        {AXES.map((field, at) => (
          <span key={field.name} className={styles.axis}>
            <span aria-hidden="true">{field.title}</span>
            <NumberInput
              field={field}
              label={`${label}, ${field.title} (${field.help})`}
              value={Number(lab[at]!.toFixed(2))}
              commit={(value, _, key) => {
                const next = lab.map((old, i) => (i === at ? value : old)) as Lab;
                return commit(next, tell(next), key);
              }}
            />
          </span>
        ))}
      </fieldset>
      {!onScreen && <span className={shared.note}>{strings.offScreen}</span>}
    </span>
  );
}
