import { useState } from 'react';
import { acceptCase, clearGone, openCases } from '../../../graph/carry-over.ts';
import type { Complaint } from '../../../graph/complaint.ts';
import { type Case, REGION_STATES } from '../../../graph/redraw.ts';
import { useJob, useView } from '../../../store/hooks.ts';
import { edit } from '../../../store/job-store.ts';
import { setView } from '../../../store/view-store.ts';
import { showPlace } from '../../../view/desk-store.ts';
import { FoldHead } from '../FoldHead.tsx';
import styles from '../regions/Regions.module.css';
import { CaseRow } from './CaseRow.tsx';
import own from './Redraw.module.css';
import { redrawTexts as texts } from './strings.ts';

/** States a person looks at; what was kept is only counted. */
const LOOKED_AT = REGION_STATES.filter((state) => state !== 'kept');

/** So much of the print is shown round what found no place, mm. */
const SPAN_MM = 40;

/** Shapes, strokes, art and fades that found no sure place on the new drawing. */
function LeftBehind({ left }: { left: readonly Complaint[] }) {
  if (left.length === 0) return null;
  return (
    <section aria-label={texts.left}>
      <h3>{texts.left}</h3>
      <ul className={styles.list}>
        {left.map(({ message, placeMm }) => (
          <li key={message}>
            {message}.{' '}
            {placeMm && (
              <button
                type="button"
                className={styles.word}
                aria-label={texts.showOf(message)}
                onClick={() => showPlace({ x: placeMm[0], y: placeMm[1] }, SPAN_MM)}
              >
                {texts.show}
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What a change of the drawing carried over, by what became of the regions; absent where there was none. */
export function Redraw() {
  const redraw = useJob((job) => job.redraw);
  const ghost = useView((state) => state.ghost);
  const [unfolded, setUnfolded] = useState<boolean | null>(null);
  if (!redraw || redraw.cases.length === 0) return null;
  const waiting = openCases(redraw);
  const left = redraw.left ?? [];
  const open = unfolded ?? waiting.length + left.length > 0;
  const kept = redraw.cases.filter(({ state }) => state === 'kept').length;
  const gone = redraw.cases.some(({ state }) => state === 'gone');
  const acceptAll = (cases: readonly (Case & { at: number })[]) =>
    edit(texts.steps.acceptAll, (job) => cases.reduce((so, { at }) => acceptCase(so, at), job));
  const away = () =>
    edit(texts.steps.away, (job) => ({
      ...job,
      redraw: job.redraw && { ...job.redraw, cases: [], gone: [], left: [] },
    }));
  return (
    <div className={styles.panel}>
      <FoldHead title={texts.title} open={open} onToggle={() => setUnfolded(!open)}>
        {texts.open(waiting.length + left.length)}
      </FoldHead>
      {open && (
        <>
          <label className={own.ghost}>
            <input
              type="checkbox"
              checked={ghost}
              onChange={({ target }) => setView({ ghost: target.checked })}
            />
            {texts.ghost}
          </label>
          <p className={styles.quiet}>
            {texts.count(kept, texts.states.kept)}, {texts.explained.kept}.
          </p>
          {LOOKED_AT.map((state) => {
            const cases = waiting.filter((each) => each.state === state);
            if (cases.length === 0) return null;
            return (
              <section key={state} aria-label={texts.count(cases.length, texts.states[state])}>
                <h3>{texts.count(cases.length, texts.states[state])}</h3>
                <p className={styles.quiet}>{texts.explained[state]}.</p>
                <ul className={styles.list}>
                  {cases.slice(0, 12).map((each) => (
                    <CaseRow key={each.at} told={each} redraw={redraw} />
                  ))}
                </ul>
                <button type="button" className={styles.word} onClick={() => acceptAll(cases)}>
                  {texts.acceptAll}
                </button>
              </section>
            );
          })}
          <LeftBehind left={left} />
          {gone && (
            <button
              type="button"
              className={styles.word}
              title={texts.clearHelp}
              onClick={() => edit(texts.steps.clear, clearGone)}
            >
              {texts.clear}
            </button>
          )}
          <button type="button" className={styles.word} onClick={away}>
            {texts.away}
          </button>
        </>
      )}
    </div>
  );
}
