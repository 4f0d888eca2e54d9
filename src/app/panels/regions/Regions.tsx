import { useState } from 'react';
import { useResults } from '../../../store/hooks.ts';
import { useRegionsShow } from '../../../view/region-tools/region-tools.ts';
import { FoldHead } from '../FoldHead.tsx';
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
      <FoldHead title={texts.title} open={open} onToggle={() => setUnfolded(open === shows ? !open : null)}>
        {map && texts.count(map.regions.length)}
      </FoldHead>
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
