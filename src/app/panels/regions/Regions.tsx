import { useState } from 'react';
import { useResults } from '../../../store/hooks.ts';
import { useRegionsShow } from '../../../view/region-tools/region-tools.ts';
import { Chosen } from './Chosen.tsx';
import { Groups } from './Groups.tsx';
import { HandEdits } from './HandEdits.tsx';
import { Openings } from './Openings.tsx';
import styles from './Regions.module.css';
import { regionPanelTexts as texts } from './strings.ts';

/** Regions: how many, those chosen, groups, openings and what was done by hand. Unfolds when they are worked at. */
export function Regions() {
  const map = useResults((state) => state.regions);
  const shows = useRegionsShow();
  const [unfolded, setUnfolded] = useState<boolean | null>(null);
  const open = unfolded ?? shows;
  return (
    <div className={styles.panel}>
      <h2>
        <button
          type="button"
          className={styles.head}
          aria-expanded={open}
          onClick={() => setUnfolded(open === shows ? !open : null)}
        >
          {texts.title}
          <svg viewBox="0 0 10 10" aria-hidden="true">
            <path d={open ? 'M1 3l4 4 4-4' : 'M3 1l4 4-4 4'} />
          </svg>
          <span>{map && texts.count(map.regions.length)}</span>
        </button>
      </h2>
      {open && !map && <p className={styles.quiet}>{texts.notYet}</p>}
      {open && map && (
        <>
          <Chosen map={map} />
          <Groups map={map} />
          <Openings map={map} />
          <HandEdits complaints={map.complaints} />
        </>
      )}
    </div>
  );
}
