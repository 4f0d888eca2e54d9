import { useMemo, useState } from 'react';
import type { RegionMap } from '../../../../workers/client.ts';
import { useJob } from '../../../store/hooks.ts';
import { GroupRow } from './GroupRow.tsx';
import styles from './Regions.module.css';
import { regionPanelTexts } from './strings.ts';

/** The groups of the job; pressed, one unfolds what can be done with it. */
export function Groups({ map }: { map: RegionMap }) {
  const groups = useJob((job) => job.groups);
  const there = useMemo(() => new Set(map.regions.map(({ id }) => id)), [map]);
  const [open, setOpen] = useState<string | null>(null);
  if (groups.length === 0) return null;
  return (
    <>
      <h3>{regionPanelTexts.groups.title}</h3>
      <ul className={styles.list}>
        {groups.map((group) => (
          <GroupRow
            key={group.id}
            group={group}
            there={there}
            open={open === group.id}
            onToggle={() => setOpen(open === group.id ? null : group.id)}
          />
        ))}
      </ul>
    </>
  );
}
