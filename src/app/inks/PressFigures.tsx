import type { NumberField } from '../../docket/fields.ts';
import { NumberInput } from '../../docket/NumberInput.tsx';
import { LADDER } from '../../ink/form/layout.ts';
import { useJob } from '../../store/hooks.ts';
import styles from './Inks.module.css';
import { setFigure } from './press-test.ts';
import { inkTexts } from './strings.ts';

const texts = inkTexts.test;
const LINES = ['leastPositiveMm', 'leastReverseMm'] as const;
const DRIFTS = ['toleranceAlongMm', 'toleranceAcrossMm'] as const;

const DRIFT: NumberField = {
  as: 'number',
  name: 'drift',
  title: '',
  help: '',
  usual: undefined,
  least: 0,
  most: 20,
  whole: false,
  unit: 'mm',
  nullable: true,
};

/** What lines held and how far plates drifted, read off ladder and ruler: figures of the press. */
export function PressFigures() {
  const press = useJob((job) => job.press);
  return (
    <section className={styles.figures} aria-label={texts.pressHeading}>
      <h3>{texts.pressHeading}</h3>
      <p className={styles.quiet}>{texts.pressHelp}</p>
      {LINES.map((figure) => (
        <label key={figure}>
          <span aria-hidden="true">{texts.figures[figure]}</span>
          <select
            aria-label={texts.figures[figure]}
            value={press?.figures[figure]?.value ?? ''}
            onChange={({ target }) => setFigure(figure, target.value === '' ? null : Number(target.value))}
          >
            <option value="">{texts.unknown}</option>
            {LADDER.map((width) => (
              <option key={width} value={width}>
                {width} mm
              </option>
            ))}
          </select>
        </label>
      ))}
      {DRIFTS.map((figure) => (
        <p key={figure}>
          <span aria-hidden="true">{texts.figures[figure]}</span>
          <NumberInput
            field={DRIFT}
            label={texts.figures[figure]}
            value={press?.figures[figure]?.value ?? null}
            placeholder={texts.none}
            commit={(value) => {
              setFigure(figure, value);
              return null;
            }}
          />
        </p>
      ))}
    </section>
  );
}
