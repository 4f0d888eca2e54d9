import { useState } from 'react';
import { type Measurement, READINGS } from '../graph/inks.ts';
import { ColourControl } from './ColourControl.tsx';
import controls from './Controls.module.css';
import styles from './Docket.module.css';
import { InkChip } from './InkChip.tsx';
import own from './InkSet.module.css';
import type { InkSetSettings } from './ink-edits.ts';
import { strings } from './strings.ts';

const words = strings.measured;
const FRESH: Measurement['lab'] = [50, 0, 0];

interface MeasuredListProps {
  set: InkSetSettings;
  commit(measured: readonly Measurement[], words: string, gesture?: string): string | null;
}

/** Solids and overprints as they were read from a print, and how; a hint counts once it is accepted. */
export function MeasuredList({ set, commit }: MeasuredListProps) {
  const { measured, inks } = set;
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const nameOf = ({ inks: ids }: Pick<Measurement, 'inks'>) =>
    ids.map((id) => inks.find((ink) => ink.id === id)?.name ?? id).join(' + ');
  const change = (at: number, to: Partial<Measurement>, text: string, gesture?: string) =>
    commit(
      measured.map((each, i) => (i === at ? { ...each, ...to } : each)),
      `${nameOf(measured[at]!)} ${text}`,
      gesture,
    );
  const choose = (id: string) =>
    setChosen(chosen.includes(id) ? chosen.filter((each) => each !== id) : [...chosen, id]);
  const add = () => {
    const inOrder = inks.filter(({ id }) => chosen.includes(id)).map(({ id }) => id);
    commit([...measured, { inks: inOrder, lab: FRESH }], nameOf({ inks: inOrder }));
    setChosen([]);
  };
  return (
    <>
      <ul className={own.inks}>
        {measured.map((each, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: readings have no id; two of one overprint may stand here
          <li key={i} className={own.ink}>
            <p>{nameOf(each)}</p>
            <ColourControl
              label={words.colour(nameOf(each))}
              lab={each.lab}
              commit={(lab, text, gesture) => change(i, { lab: lab as Measurement['lab'] }, text, gesture)}
            />
            <span className={controls.part}>
              <select
                className={controls.select}
                aria-label={words.howOf(nameOf(each))}
                value={each.how ?? 'instrument'}
                onChange={({ target }) => {
                  const how = target.value as Measurement['how'];
                  change(i, { how, accepted: undefined }, words.how[how!]);
                }}
              >
                {READINGS.map((how) => (
                  <option key={how} value={how}>
                    {words.how[how]}
                  </option>
                ))}
              </select>
              <button
                type="button"
                className={styles.word}
                aria-label={words.removeOf(nameOf(each))}
                onClick={() => commit(measured.toSpliced(i, 1), words.gone(nameOf(each)))}
              >
                {words.remove}
              </button>
            </span>
            {(each.how === 'photo' || each.how === 'eye') && (
              <label className={own.accept}>
                <input
                  type="checkbox"
                  checked={each.accepted === true}
                  onChange={({ target }) =>
                    change(
                      i,
                      { accepted: target.checked || undefined },
                      target.checked ? words.counts : words.hint,
                    )
                  }
                />
                {words.accept}
              </label>
            )}
          </li>
        ))}
      </ul>
      <fieldset className={own.choice} aria-label={words.which}>
        {inks.map((ink, i) => (
          <label key={ink.id}>
            <input type="checkbox" checked={chosen.includes(ink.id)} onChange={() => choose(ink.id)} />
            <InkChip ink={ink} tear={i} />
            {ink.name}
          </label>
        ))}
      </fieldset>
      <button type="button" className={styles.add} disabled={chosen.length === 0} onClick={add}>
        {words.add}
      </button>
    </>
  );
}
