import { useMemo, useState } from 'react';
import { useJob } from '../../../store/hooks.ts';
import { edit } from '../../../store/job-store.ts';
import { chooseFiles } from '../../files/browser-files.ts';
import { say } from '../../files/files-store.ts';
import { FoldHead } from '../FoldHead.tsx';
import styles from '../regions/Regions.module.css';
import { RoughRows } from './RoughRows.tsx';
import { addRough, withMatches, withoutRough } from './rough-edits.ts';
import { roughTexts as texts } from './strings.ts';
import { useMatches } from './use-matches.ts';

async function choose(): Promise<void> {
  const [chosen] = await chooseFiles('drawing');
  if (!chosen) return;
  try {
    addRough({ name: chosen.file.name, bytes: new Uint8Array(await chosen.file.arrayBuffer()) });
  } catch (error) {
    say((error as Error).message);
  }
}

/** The colour sketch that recipes are matched to: how near the inks come, and where they do not. */
export function Rough() {
  const asset = useJob((job) => {
    const node = job.graph.nodes.find(({ kind }) => kind === 'match-rough');
    return typeof node?.settings.asset === 'string' ? node.settings.asset : null;
  });
  const file = useJob((job) => (asset ? job.assets[asset]?.file : undefined));
  const [open, setOpen] = useState(false);
  const matches = useMatches(open && asset !== null);
  const mean = useMemo(() => {
    if (matches === null || typeof matches === 'string' || matches.regions.length === 0) return null;
    const sum = matches.regions.reduce((so, { distance }) => so + distance, 0);
    return sum / matches.regions.length;
  }, [matches]);
  return (
    <div className={styles.panel}>
      <FoldHead title={texts.title} open={open} onToggle={() => setOpen(!open)}>
        {file ?? ''}
      </FoldHead>
      {open && asset === null && (
        <>
          <p className={styles.quiet}>{texts.none}</p>
          <button type="button" className={styles.word} onClick={() => void choose()}>
            {texts.choose}
          </button>
        </>
      )}
      {open && asset !== null && (
        <>
          {typeof matches === 'string' && <p role="alert">{matches}</p>}
          {matches === null && <p className={styles.quiet}>{texts.matching}</p>}
          {mean !== null && <p className={styles.told}>{texts.mean(mean)}</p>}
          {matches !== null && typeof matches !== 'string' && (
            <>
              {matches.bare.length > 0 && <p className={styles.quiet}>{texts.bare(matches.bare.length)}</p>}
              <RoughRows matches={matches} />
              <button
                type="button"
                className={styles.word}
                title={texts.settleHelp}
                onClick={() => edit(texts.settleStep, (job) => withMatches(job, matches))}
              >
                {texts.settle}
              </button>
            </>
          )}
          <button type="button" className={styles.word} onClick={() => void choose()}>
            {texts.another}
          </button>
          <button type="button" className={styles.word} onClick={() => edit(texts.outStep, withoutRough)}>
            {texts.takeOut}
          </button>
        </>
      )}
    </div>
  );
}
