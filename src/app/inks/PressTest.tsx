import { useMemo, useState } from 'react';
import type { Client } from '../../../workers/client.ts';
import { ColourControl } from '../../docket/ColourControl.tsx';
import { type Lab, type Measurement, READINGS } from '../../graph/inks.ts';
import { formLayout, type Page } from '../../ink/form/layout.ts';
import { type FormReadings, findingsOf } from '../../ink/form/read-form.ts';
import { printOf } from '../../nodes/print.ts';
import { useJob } from '../../store/hooks.ts';
import { usePrintColours } from '../panels/use-print-colours.ts';
import { FormPicture } from './FormPicture.tsx';
import styles from './Inks.module.css';
import { PressFigures } from './PressFigures.tsx';
import { deliverForm, takeOver } from './press-test.ts';
import { inkTexts } from './strings.ts';

const texts = inkTexts.test;
const PAGES: Readonly<Record<string, Page>> = {
  A4: { widthMm: 210, heightMm: 297 },
  A3: { widthMm: 297, heightMm: 420 },
};

type How = NonNullable<Measurement['how']>;

/** A form to print on one's own press, and what came out of it: solids, overprints, tints, lines, register. */
export function PressTest({ client }: { client: Client }) {
  const nodes = useJob((job) => job.graph.nodes);
  const print = useMemo(() => printOf(nodes), [nodes]);
  const found = usePrintColours();
  const colours = typeof found === 'string' ? null : found;
  const [size, setSize] = useState('A4');
  const [how, setHow] = useState<How>('instrument');
  const [readings, setReadings] = useState<FormReadings>({});
  const page = PAGES[size]!;
  const form = useMemo(() => {
    if (!print) return texts.noInks;
    try {
      return formLayout(
        print.plates.map((id, i) => ({ id, ink: print.input.inks[i]!.id })),
        page,
      );
    } catch (error) {
      return (error as Error).message;
    }
  }, [print, page]);
  if (!print || typeof form === 'string') return <p role="alert">{form as string}</p>;
  const findings = findingsOf(form, readings, how);
  const solids = form.patches.filter(
    ({ tints, id }) => !id.endsWith(' 100') && tints.every((tint) => tint === 0 || tint === 1),
  );
  const recipeOf = (tints: readonly number[]) =>
    Object.fromEntries(print.plates.map((plate, i) => [plate, 100 * tints[i]!]));
  const read = (id: string, lab: Lab) => setReadings({ ...readings, [id]: lab });
  const count = Object.keys(readings).length;
  return (
    <div className={styles.test}>
      <p className={styles.quiet}>{texts.help}</p>
      <div className={styles.actions}>
        <label>
          {texts.page}{' '}
          <select value={size} onChange={({ target }) => setSize(target.value)}>
            {Object.keys(PAGES).map((name) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        </label>
        <button type="button" onClick={() => void deliverForm(client, page)}>
          {texts.make}
        </button>
      </div>
      <h3>{texts.results}</h3>
      <label className={styles.how}>
        {texts.howRead}{' '}
        <select value={how} onChange={({ target }) => setHow(target.value as How)}>
          {READINGS.map((each) => (
            <option key={each} value={each}>
              {texts.how[each]}
            </option>
          ))}
        </select>
      </label>
      <p className={styles.quiet}>{texts.trust[how]}</p>
      {(how === 'photo' || how === 'scan') && (
        <FormPicture client={client} form={form} paper={print.input.paper} onRead={setReadings} />
      )}
      <ul className={styles.patches}>
        {solids.map((patch) => {
          const predicted = colours?.colourOf(recipeOf(patch.tints)).lab;
          const lab = readings[patch.id];
          return (
            <li key={patch.id}>
              <span>{patch.id === 'paper' ? texts.paper : patch.id}</span>
              {lab ? (
                <ColourControl
                  label={patch.id}
                  lab={lab}
                  commit={(next) => {
                    read(patch.id, next as Lab);
                    return null;
                  }}
                />
              ) : (
                <button
                  type="button"
                  className={styles.word}
                  aria-label={texts.typeOf(patch.id)}
                  disabled={!predicted}
                  onClick={() =>
                    predicted && read(patch.id, predicted.map((v) => Math.round(v * 10) / 10) as Lab)
                  }
                >
                  {texts.type}
                </button>
              )}
            </li>
          );
        })}
      </ul>
      {findings.doubts.length > 0 && (
        <ul className={styles.doubts}>
          {findings.doubts.map((doubt) => (
            <li key={doubt}>{doubt}</li>
          ))}
        </ul>
      )}
      <p role="status">{texts.found(count, findings.measured.length, Object.keys(findings.curves).length)}</p>
      <button
        type="button"
        className={styles.main}
        disabled={findings.measured.length === 0}
        onClick={() => takeOver(findings)}
      >
        {texts.takeOver}
      </button>
      <PressFigures />
    </div>
  );
}
