import type { Ink } from '../graph/inks.ts';
import controls from './Controls.module.css';
import { curveText, readCurve } from './curve-text.ts';
import styles from './Docket.module.css';
import type { NumberField } from './fields.ts';
import { NumberInput } from './NumberInput.tsx';
import { strings } from './strings.ts';
import { TextInput } from './TextInput.tsx';

const words = strings.inks;

const GAIN: NumberField = {
  as: 'number',
  name: 'gain',
  title: words.gain,
  help: words.gainHelp,
  usual: undefined,
  least: 0,
  most: 50,
  whole: false,
  unit: '%',
  nullable: true,
};

const TONE_GAIN: NumberField = {
  ...GAIN,
  name: 'toneGainPercent',
  title: words.toneGain,
  least: -20,
  most: 45,
};

type Growth = Pick<Ink, 'gain' | 'toneGainPercent' | 'curvePercent'>;

const USUAL: Growth = { gain: undefined, toneGainPercent: undefined, curvePercent: undefined };

interface GrowthFieldsProps {
  ink: Ink;
  change(change: Partial<Ink>, words: string, gesture?: string): string | null;
}

/** How the tints of an ink grow on the paper, said in one of three ways: the one given last holds. */
export function GrowthFields({ ink, change }: GrowthFieldsProps) {
  const tell = (what: string, text: string) => `${ink.name} ${what.toLowerCase()} ${text || strings.empty}`;
  const percent = ink.gain === undefined ? null : Number((ink.gain * 100).toFixed(2));
  return (
    <>
      <span className={controls.part}>
        <span aria-hidden="true">{words.gain}</span>
        <NumberInput
          field={GAIN}
          label={`${ink.name}, ${words.gain.toLowerCase()}`}
          value={percent}
          commit={(value, text, gesture) =>
            change(
              { ...USUAL, gain: value === null ? undefined : value / 100 },
              tell(words.gain, text),
              gesture,
            )
          }
        />
      </span>
      <p className={styles.note}>{words.gainHelp}</p>
      <span className={controls.part}>
        <span aria-hidden="true">{words.toneGain}</span>
        <NumberInput
          field={TONE_GAIN}
          label={`${ink.name}, ${words.toneGain.toLowerCase()}`}
          value={ink.toneGainPercent ?? null}
          commit={(value, text, gesture) =>
            change({ ...USUAL, toneGainPercent: value ?? undefined }, tell(words.toneGain, text), gesture)
          }
        />
      </span>
      <p className={styles.note}>{words.toneGainHelp}</p>
      <span className={controls.part}>
        <span aria-hidden="true">{words.curve}</span>
        <TextInput
          label={`${ink.name}, ${words.curve.toLowerCase()}`}
          value={curveText(ink.curvePercent)}
          most={400}
          mayBeEmpty
          placeholder="10 6, 50 45, 90 92"
          wrongText={words.notCurve}
          commit={(text) => {
            const curve = readCurve(text);
            if (curve === null) return words.notCurve;
            return change({ ...USUAL, curvePercent: curve }, tell(words.curve, text));
          }}
        />
      </span>
      <p className={styles.note}>{words.curveHelp}</p>
    </>
  );
}
