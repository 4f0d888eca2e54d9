import { useState } from 'react';
import type { GraphNode } from '../graph/job.ts';
import { isSetAs, keepable, withKept, withoutKept, withPreset } from '../graph/kept-settings.ts';
import type { NodeKind } from '../graph/node-kind.ts';
import { withNode } from '../store/edits.ts';
import { useJob } from '../store/hooks.ts';
import { edit } from '../store/job-store.ts';
import styles from './Docket.module.css';
import own from './KeptRow.module.css';
import { NewName } from './NewName.tsx';
import { strings } from './strings.ts';

const texts = strings.kept;

interface Named {
  name: string;
  help?: string;
  settings: GraphNode['settings'];
  isOwn: boolean;
}

/** Settings to begin from, ours and those the person kept, and a way to keep these. */
export function KeptRow({ node, kind }: { node: GraphNode; kind: NodeKind }) {
  const kept = useJob((job) => job.kept);
  const [names, setNames] = useState(false);
  const mine = (kept ?? []).filter((each) => each.kind === kind.kind);
  const all: Named[] = [
    ...mine.map((each) => ({ ...each, isOwn: true })),
    ...kind.presets!.list.map((each) => ({ ...each, isOwn: false })),
  ];
  const now = all.findIndex(({ settings }) => isSetAs(kind, node.settings, settings));
  const chosen = all[now];
  const choose = (at: number) => {
    const { name, settings } = all[at]!;
    edit(texts.step(kind.title, name), (job) =>
      withNode(job, node.id, (each) => ({ ...each, settings: withPreset(kind, each.settings, settings) })),
    );
  };
  const keep = (name: string) =>
    edit(texts.keepStep(name), (job) =>
      withKept(job, { kind: kind.kind, name, settings: keepable(kind, node.settings) }),
    );
  const options = (isOwn: boolean) =>
    all.map((each, i) =>
      each.isOwn === isOwn ? (
        <option key={`${each.isOwn} ${each.name}`} value={i}>
          {each.name}
        </option>
      ) : null,
    );
  return (
    <div className={styles.field}>
      <div className={styles.top}>
        <span className={styles.title} aria-hidden="true">
          {texts.title}
        </span>
        <select
          className={own.select}
          aria-label={texts.title}
          value={now}
          onChange={({ target }) => choose(Number(target.value))}
        >
          {now < 0 && <option value={-1}>{texts.choose}</option>}
          {mine.length > 0 && <optgroup label={texts.own}>{options(true)}</optgroup>}
          <optgroup label={texts.ours}>{options(false)}</optgroup>
        </select>
      </div>
      <div className={styles.help}>
        <span>{chosen?.help}</span>
        {names && <NewName onKeep={keep} onEnd={() => setNames(false)} />}
        {!names && !chosen && (
          <button
            type="button"
            className={styles.reset}
            aria-label={texts.keepOf(kind.title)}
            onClick={() => setNames(true)}
          >
            {texts.keep}
          </button>
        )}
        {chosen?.isOwn && (
          <button
            type="button"
            className={styles.reset}
            aria-label={texts.forgetOf(chosen.name)}
            onClick={() =>
              edit(texts.forgetStep(chosen.name), (job) =>
                withoutKept(job, { kind: kind.kind, name: chosen.name }),
              )
            }
          >
            {texts.forget}
          </button>
        )}
      </div>
    </div>
  );
}
