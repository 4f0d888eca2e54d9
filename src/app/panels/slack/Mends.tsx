import { useMemo } from 'react';
import { mendedForAll, withHeavierLine, withInset } from '../../../press/mend.ts';
import type { SlackReport } from '../../../press/slack.ts';
import { type Mend, mendForAll, mendsOf } from '../../../press/slack-mends.ts';
import { toleranceOf } from '../../../press/tolerance.ts';
import { withPairWidth } from '../../../press/with-trap.ts';
import { useJob } from '../../../store/hooks.ts';
import { edit } from '../../../store/job-store.ts';
import { showPlace } from '../../../view/desk-store.ts';
import { platesOf } from '../../../view/plates-of.ts';
import { Few } from '../regions/Few.tsx';
import styles from '../regions/Regions.module.css';
import own from './Slack.module.css';
import { slackTexts as texts } from './strings.ts';

/** So much of the sheet is shown round a fault, mm. */
const SPAN_MM = 14;

/** The borders that do not hold within the tolerance, the least that mends each, and one press for all. */
export function Mends({ report }: { report: SlackReport }) {
  const job = useJob((each) => each);
  const tolerance = useMemo(() => toleranceOf(job), [job]);
  const mends = useMemo(() => mendsOf(report, tolerance), [report, tolerance]);
  const bare = mends.filter(({ fault }) => fault.border.shows === 'paper');
  const all = mendForAll(mends);
  if (bare.length === 0)
    return (
      <>
        <p className={styles.told}>{texts.holds}</p>
        <Overprints count={mends.length} />
      </>
    );
  return (
    <>
      <h3>{texts.fails(bare.length)}</h3>
      {(all.trapMm !== null || all.insetMm !== null) && (
        <>
          <button
            type="button"
            className={styles.word}
            onClick={() => edit(texts.allStep, (before) => mendedForAll(before, all, tolerance))}
          >
            {texts.all}
          </button>
          <p className={styles.quiet}>{texts.allHelp(all.trapMm, all.insetMm)}</p>
        </>
      )}
      <Few items={bare}>
        {(mend) => {
          const { plate, between, against } = mend.fault.border;
          return <Row key={`${plate} ${between} ${against}`} mend={mend} />;
        }}
      </Few>
      <Overprints count={mends.length - bare.length} />
    </>
  );
}

function Overprints({ count }: { count: number }) {
  return count > 0 ? <p className={styles.quiet}>{texts.noteOverprints(count)}</p> : null;
}

function Row({ mend: { fault, trapMm, insetMm, heavierMm } }: { mend: Mend }) {
  const plates = useJob(platesOf);
  const { border, way, shortMm } = fault;
  const ink = plates.find(({ id }) => id === border.plate)?.ink ?? border.plate;
  const [x, y] = way.placeMm;
  return (
    <li className={own.row}>
      <button type="button" className={styles.name} onClick={() => showPlace({ x, y }, SPAN_MM)}>
        {texts.fault(ink, shortMm)}
        <small>{texts.between[border.against]}</small>
      </button>
      <div className={styles.actions}>
        {trapMm !== null && (
          <button
            type="button"
            onClick={() => edit(texts.trapStep(trapMm), (job) => withPairWidth(job, border.between, trapMm))}
          >
            {texts.trap(trapMm)}
          </button>
        )}
        {insetMm !== null && (
          <button type="button" onClick={() => edit(texts.inset(insetMm), (job) => withInset(job, insetMm))}>
            {texts.inset(insetMm)}
          </button>
        )}
        {heavierMm !== null && (
          <button
            type="button"
            onClick={() => edit(texts.heavier(heavierMm), (job) => withHeavierLine(job, heavierMm))}
          >
            {texts.heavier(heavierMm)}
          </button>
        )}
      </div>
    </li>
  );
}
