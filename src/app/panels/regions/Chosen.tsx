import { useState } from 'react';
import type { RegionMap } from '../../../../workers/client.ts';
import { freshGroupName, withGroup } from '../../../store/groups.ts';
import { useJob, useView } from '../../../store/hooks.ts';
import { edit } from '../../../store/job-store.ts';
import { tint } from '../../../view/hand.ts';
import { choose, chooseAllBeside } from '../../../view/region-tools/choose-tool.ts';
import { NameField } from '../NameField.tsx';
import styles from './Regions.module.css';
import { regionPanelTexts } from './strings.ts';

const texts = regionPanelTexts.chosen;

/** The name of a group to be, until it is made or let be. */
function NewGroup({ regions, onEnd }: { regions: readonly string[]; onEnd(): void }) {
  const { name, nameOf, steps } = regionPanelTexts.groups;
  const groups = useJob((job) => job.groups);
  return (
    <NameField
      label={nameOf}
      name={freshGroupName(groups, name)}
      onKeep={(text) => {
        if (text.trim() !== '') edit(steps.make(text.trim()), (job) => withGroup(job, text, regions));
      }}
      onEnd={onEnd}
    />
  );
}

/** The chosen regions and what can be done with them. */
export function Chosen({ map }: { map: RegionMap }) {
  const chosen = useView((state) => state.chosen);
  const inHand = useView((state) => state.inHand);
  const [naming, setNaming] = useState(false);
  const here = map.regions.flatMap(({ id }) => (chosen.includes(id) ? [id] : []));
  return (
    <>
      <h3>{texts.title}</h3>
      {here.length === 0 ? (
        <p className={styles.quiet}>{texts.none}</p>
      ) : (
        <>
          <p className={styles.told}>{texts.count(here.length)}</p>
          {naming && <NewGroup regions={here} onEnd={() => setNaming(false)} />}
          <fieldset className={styles.actions} aria-label={texts.actions}>
            <button type="button" onClick={() => setNaming(true)}>
              {texts.group}
            </button>
            <button
              type="button"
              disabled={!inHand}
              title={inHand ? texts.tintHelp : texts.nothingInHand}
              onClick={() => tint(...here)}
            >
              {texts.tint}
            </button>
            <button type="button" title={texts.besideHelp} onClick={chooseAllBeside}>
              {texts.beside}
            </button>
            <button type="button" onClick={() => choose([])}>
              {texts.clear}
            </button>
          </fieldset>
        </>
      )}
    </>
  );
}
