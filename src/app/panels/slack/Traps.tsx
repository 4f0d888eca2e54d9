import { useState } from 'react';
import type { ReportedTrap } from '../../../../workers/client.ts';
import { displayOf } from '../../../ink/display.ts';
import { useJob } from '../../../store/hooks.ts';
import { showPlace } from '../../../view/desk-store.ts';
import { platesOf, recipeText } from '../../../view/plates-of.ts';
import { Few } from '../regions/Few.tsx';
import styles from '../regions/Regions.module.css';
import { Torn } from '../Torn.tsx';
import own from './Slack.module.css';
import { slackTexts as texts } from './strings.ts';
import { useTraps } from './use-traps.ts';

/** So much of the sheet is shown round a border, mm. */
const SPAN_MM = 14;

/** The borders that are trapped, each with the colour of its overlap and, on demand, why it is trapped that way. */
export function Traps() {
  const traps = useTraps(true);
  if (traps === null) return null;
  if (typeof traps === 'string') return <p role="alert">{traps}</p>;
  const trapped = traps.borders.filter(({ does, widthMm }) => does !== 'none' && widthMm > 0);
  return (
    <>
      <h3>{texts.traps}</h3>
      <p className={styles.told}>{texts.trapsCount(trapped.length, traps.count)}</p>
      <Few items={trapped}>{(trap, i) => <Row key={trap.between.join()} trap={trap} piece={i} />}</Few>
    </>
  );
}

function Row({ trap, piece }: { trap: ReportedTrap; piece: number }) {
  const [open, setOpen] = useState(false);
  const plates = useJob(platesOf);
  const { does, overlap, placeMm, widthMm, why } = trap;
  const inks = trap.plates.map((id) => plates.find((plate) => plate.id === id)?.ink ?? id).join(', ');
  const what = does === 'hold-back' ? texts.staysBack(inks, widthMm) : texts.spreads(inks, widthMm);
  const recipe = overlap ? texts.overlap(recipeText(overlap.recipe, plates)) : '';
  return (
    <li>
      <div className={styles.row}>
        <button
          type="button"
          className={own.trap}
          disabled={placeMm === null}
          onClick={() => placeMm && showPlace({ x: placeMm[0], y: placeMm[1] }, SPAN_MM)}
        >
          <Torn
            piece={30 + piece}
            colour={overlap ? displayOf(overlap.lab, 'srgb').css : undefined}
            beyond={overlap?.onScreen === false}
          />
          <span>
            {what}
            <small>{recipe}</small>
          </span>
        </button>
        <button
          type="button"
          className={styles.word}
          aria-expanded={open}
          aria-label={texts.whyOf(what)}
          onClick={() => setOpen(!open)}
        >
          {texts.why}
        </button>
      </div>
      {open && <p className={styles.quiet}>{why}</p>}
    </li>
  );
}
