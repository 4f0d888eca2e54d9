import { useMemo } from 'react';
import type { RegionMap } from '../../../../workers/client.ts';
import { deskStore, focusPrint, showPlace } from '../../../view/desk-store.ts';
import { type Gap, gapKey, pointOf } from '../../../view/region-tools/marks.ts';
import { drawWall } from '../../../view/region-tools/path-tools.ts';
import { useMarks } from '../../../view/region-tools/shown-marks.ts';
import { takeTool } from '../../../view/tools.ts';
import { Few } from './Few.tsx';
import { pointAt } from './point-at.ts';
import styles from './Regions.module.css';
import { regionPanelTexts } from './strings.ts';

const texts = regionPanelTexts.openings;

/** So much is shown round an opening: this many times its width, and not less, mm. */
const TIMES = 14;
const LEAST_SPAN_MM = 14;

function show({ placeMm, widthMm }: Gap, key: string): void {
  showPlace(pointOf(placeMm), Math.max(LEAST_SPAN_MM, TIMES * widthMm));
  deskStore.setState({ mark: key });
}

/** Shows the opening with Draw wall in hand and the crosshair on it: where its ends are only the hand knows. */
function closeByHand(gap: Gap, key: string): void {
  takeTool(drawWall);
  show(gap, key);
  deskStore.setState({ crosshair: pointOf(gap.placeMm), pointer: null });
  focusPrint();
}

/** How many openings were closed, and those that are too wide for it. */
export function Openings({ map }: { map: RegionMap }) {
  const marks = useMarks();
  const walls = useMemo(() => marks.flatMap((mark) => (mark.is === 'wall' ? [mark] : [])), [marks]);
  const closed = walls.filter(({ openedBy }) => openedBy === null);
  const widest = closed.reduce((most, { wall }) => Math.max(most, wall.widthMm), 0);
  const opened = walls.length - closed.length;
  return (
    <>
      <h3>{texts.title}</h3>
      <p className={styles.told}>
        {closed.length > 0 ? texts.closed(closed.length, widest) : texts.noneClosed}
      </p>
      {opened > 0 && <p className={styles.told}>{texts.opened(opened)}</p>}
      {map.openGaps.length > 0 && (
        <>
          <p className={styles.quiet}>{texts.wider}</p>
          <Few items={map.openGaps}>
            {(gap, i) => {
              const place = regionPanelTexts.at(pointOf(gap.placeMm));
              return (
                <li key={gapKey(i)} className={styles.row} {...pointAt(gapKey(i))}>
                  <button
                    type="button"
                    className={styles.name}
                    title={texts.goTo(place)}
                    onClick={() => show(gap, gapKey(i))}
                  >
                    {texts.gap(gap.widthMm)}
                    <small>{texts.behind(gap.partsMm2)}</small>
                  </button>
                  <button
                    type="button"
                    className={styles.word}
                    title={texts.closeHelp(place)}
                    onClick={() => closeByHand(gap, gapKey(i))}
                  >
                    {texts.close}
                  </button>
                </li>
              );
            }}
          </Few>
        </>
      )}
    </>
  );
}
