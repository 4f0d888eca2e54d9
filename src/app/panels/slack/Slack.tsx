import { useMemo, useState } from 'react';
import type { SlackLeast, SlackReport } from '../../../press/slack.ts';
import { toleranceOf } from '../../../press/tolerance.ts';
import { trapOf } from '../../../press/with-trap.ts';
import { useJob, useView } from '../../../store/hooks.ts';
import { setView } from '../../../store/view-store.ts';
import { showPlace } from '../../../view/desk-store.ts';
import { platesOf } from '../../../view/plates-of.ts';
import { FoldHead } from '../FoldHead.tsx';
import styles from '../regions/Regions.module.css';
import { Mends } from './Mends.tsx';
import { slackTexts as texts } from './strings.ts';
import { Traps } from './Traps.tsx';
import { useSlack } from './use-slack.ts';

/** So much of the sheet is shown round the least slack, mm. */
const SPAN_MM = 14;

/** How far plates may drift before paper or another overprint shows, and what mends it. Unfolds with its view. */
export function Slack() {
  const shows = useView((state) => state.showing.view === 'slack');
  const [unfolded, setUnfolded] = useState<boolean | null>(null);
  const open = unfolded ?? shows;
  const slack = useSlack(open || shows);
  const traps = useJob((job) => trapOf(job) !== undefined);
  return (
    <div className={styles.panel}>
      <FoldHead title={texts.title} open={open} onToggle={() => setUnfolded(open === shows ? !open : null)} />
      {open && (
        <>
          <Tolerances />
          {!shows && (
            <button
              type="button"
              className={styles.word}
              onClick={() => setView({ showing: { view: 'slack' } })}
            >
              {texts.show}
            </button>
          )}
          {slack === null && (
            <p className={styles.quiet} role="status">
              {texts.working}
            </p>
          )}
          {typeof slack === 'string' && <p role="alert">{slack}</p>}
          {slack !== null && typeof slack !== 'string' && (
            <>
              {shows && <p className={styles.quiet}>{texts.key}</p>}
              <Mends report={slack.report} />
              <Plates report={slack.report} />
            </>
          )}
          {traps && <Traps />}
        </>
      )}
    </div>
  );
}

function Tolerances() {
  const job = useJob((each) => each);
  const { alongMm, acrossMm } = useMemo(() => toleranceOf(job), [job]);
  return <p className={styles.quiet}>{texts.tolerance(alongMm, acrossMm)}</p>;
}

function Plates({ report }: { report: SlackReport }) {
  const named = useJob(platesOf);
  return (
    <>
      <h3>{texts.plates}</h3>
      <ul className={styles.list}>
        {report.plates.map(({ id, paper, overprint }) => {
          const ink = named.find((plate) => plate.id === id)?.ink ?? id;
          return (
            <li key={id}>
              <span className={styles.told}>{ink}</span>
              <div className={styles.actions}>
                <Least ink={ink} least={paper} text={texts.paper} none={texts.noPaper} />
                <Least ink={ink} least={overprint} text={texts.overprint} none={texts.noOverprint} />
              </div>
            </li>
          );
        })}
      </ul>
    </>
  );
}

interface LeastProps {
  ink: string;
  least: SlackLeast | null;
  text(slackMm: number): string;
  none: string;
}

function Least({ ink, least, text, none }: LeastProps) {
  if (!least) return <span className={styles.quiet}>{none}</span>;
  const {
    slackMm,
    placeMm: [x, y],
  } = least;
  return (
    <button type="button" title={texts.goTo(ink, text(slackMm))} onClick={() => showPlace({ x, y }, SPAN_MM)}>
      {text(slackMm)}
    </button>
  );
}
