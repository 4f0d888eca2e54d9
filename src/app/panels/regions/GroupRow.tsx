import { useRef, useState } from 'react';
import type { RegionGroup } from '../../../graph/region-edits.ts';
import { addToGroup, deleteGroup, renameGroup, takeFromGroup } from '../../../store/groups.ts';
import { useView } from '../../../store/hooks.ts';
import { edit } from '../../../store/job-store.ts';
import { tint } from '../../../view/hand.ts';
import { choose } from '../../../view/region-tools/choose-tool.ts';
import { NameField } from '../NameField.tsx';
import styles from './Regions.module.css';
import { regionPanelTexts } from './strings.ts';

const texts = regionPanelTexts.groups;

interface GroupRowProps {
  group: RegionGroup;
  /** Ids of the regions that the drawing has. */
  there: ReadonlySet<string>;
  open: boolean;
  onToggle(): void;
}

/** One group: its name and how many regions it has; unfolded, what can be done with it. */
export function GroupRow({ group, there, open, onToggle }: GroupRowProps) {
  const { id, name, regions } = group;
  const [renaming, setRenaming] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const here = regions.filter((region) => there.has(region));
  const gone = regions.length - here.length;
  const endRename = () => {
    setRenaming(false);
    setTimeout(() => button.current?.focus());
  };
  return (
    <li>
      {renaming ? (
        <NameField
          label={texts.nameOf}
          name={name}
          onKeep={(text) => edit(texts.steps.rename, (job) => renameGroup(job, id, text))}
          onEnd={endRename}
        />
      ) : (
        <button
          ref={button}
          type="button"
          className={styles.name}
          aria-expanded={open}
          onClick={onToggle}
          onDoubleClick={() => setRenaming(true)}
          onKeyDown={(event) => event.key === 'F2' && setRenaming(true)}
        >
          {name}
          <small>{texts.count(here.length, gone)}</small>
        </button>
      )}
      {open && <Actions group={group} here={here} gone={gone} onRename={() => setRenaming(true)} />}
    </li>
  );
}

interface ActionsProps {
  group: RegionGroup;
  here: readonly string[];
  gone: number;
  onRename(): void;
}

function Actions({ group: { id, name, regions }, here, gone, onRename }: ActionsProps) {
  const inHand = useView((state) => state.inHand);
  const chosen = useView((state) => state.chosen);
  const fresh = chosen.filter((region) => !regions.includes(region));
  const held = chosen.some((region) => regions.includes(region));
  return (
    <>
      {gone > 0 && <p className={styles.quiet}>{texts.gone(gone)}</p>}
      <fieldset className={styles.actions} aria-label={texts.actions(name)}>
        <button
          type="button"
          disabled={!inHand || here.length === 0}
          title={inHand ? texts.tintHelp(name) : regionPanelTexts.chosen.nothingInHand}
          onClick={() => tint(...here)}
        >
          {texts.tint}
        </button>
        <button type="button" title={texts.chooseHelp(name)} onClick={() => choose(here)}>
          {texts.choose}
        </button>
        <button
          type="button"
          disabled={fresh.length === 0}
          onClick={() => edit(texts.steps.add(fresh.length, name), (job) => addToGroup(job, id, fresh))}
        >
          {texts.add}
        </button>
        <button
          type="button"
          disabled={!held}
          onClick={() => edit(texts.steps.take(name), (job) => takeFromGroup(job, id, chosen))}
        >
          {texts.take}
        </button>
        <button type="button" onClick={onRename}>
          {texts.rename}
        </button>
        <button type="button" onClick={() => edit(texts.steps.remove(name), (job) => deleteGroup(job, id))}>
          {texts.remove}
        </button>
      </fieldset>
    </>
  );
}
