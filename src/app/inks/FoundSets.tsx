import { useEffect, useRef, useState } from 'react';
import type { Client, Picture } from '../../../workers/client.ts';
import { InkChip } from '../../docket/InkChip.tsx';
import type { Ink } from '../../graph/inks.ts';
import { displayOf } from '../../ink/display.ts';
import type { RankedSets } from '../../ink/ink-sets.ts';
import { jobStore } from '../../store/job-store.ts';
import { say } from '../files/files-store.ts';
import { drawSmall } from '../files/small-picture.ts';
import { Torn } from '../panels/Torn.tsx';
import styles from './Inks.module.css';
import { inkTexts } from './strings.ts';
import { jobWithSet, printWithSet } from './use-set.ts';

const texts = inkTexts.sets;
/** Longest side of a preview, px of the screen, and the scale it is printed at. */
const LONGEST = 150;
const SCALE = 16;

export interface Found {
  ranked: RankedSets;
  /** The inks the ids stand for. */
  shelf: readonly Ink[];
}

/** Sets of inks, the best first: each with what it reaches, and the print in it. */
export function FoundSets({ client, found: { ranked, shelf } }: { client: Client; found: Found }) {
  return (
    <>
      {!ranked.everySet && <p className={styles.quiet}>{texts.notAll}</p>}
      <ol className={styles.found}>
        {ranked.sets.map((set, i) => (
          <FoundSet
            key={set.inks.join(' ')}
            client={client}
            set={set}
            inks={set.inks.map((id) => shelf.find((ink) => ink.id === id)!)}
            alike={i > 0 && set.withinError}
          />
        ))}
      </ol>
    </>
  );
}

interface FoundSetProps {
  client: Client;
  set: Found['ranked']['sets'][number];
  inks: readonly Ink[];
  alike: boolean;
}

function FoundSet({ client, set, inks, alike }: FoundSetProps) {
  const names = inks.map(({ name }) => name).join(', ');
  const canvas = useRef<HTMLCanvasElement>(null);
  const [picture, setPicture] = useState<Picture | null>(null);
  useEffect(() => {
    const stop = new AbortController();
    preview(client, inks, stop.signal).then(setPicture, () => {});
    return () => stop.abort();
  }, [client, inks]);
  useEffect(() => {
    if (picture) drawSmall(picture, LONGEST * devicePixelRatio, canvas.current!);
  }, [picture]);
  return (
    <li>
      <canvas ref={canvas} hidden={!picture} role="img" aria-label={texts.preview(names)} />
      <div>
        <p className={styles.names}>
          {inks.map((ink, i) => (
            <span key={ink.id} className={styles.named}>
              <InkChip ink={ink} tear={i} /> {ink.name}
            </span>
          ))}
        </p>
        <p>{texts.mean(set.mean, set.worst)}</p>
        {alike && <p className={styles.quiet}>{texts.alike}</p>}
        <div className={styles.reached} role="img" aria-label={texts.wantedAndGot}>
          {set.colours.map(({ wanted, lab }, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two colours may be the same
            <span key={i} className={styles.both}>
              <span className={styles.half}>
                <Torn piece={40 + i} colour={displayOf(wanted, 'srgb').css} />
              </span>
              <span className={styles.half}>
                <Torn piece={80 + i} colour={displayOf(lab, 'srgb').css} />
              </span>
            </span>
          ))}
        </div>
        <button
          type="button"
          className={styles.word}
          aria-label={texts.useOf(names)}
          onClick={() => printWithSet(client, inks).catch((error: Error) => say(error.message))}
        >
          {texts.use}
        </button>
      </div>
    </li>
  );
}

async function preview(client: Client, inks: readonly Ink[], signal: AbortSignal): Promise<Picture> {
  const job = await jobWithSet(client, jobStore.getState().job!, inks);
  return client.run('picture', { job, show: { view: 'proof' }, scale: SCALE }, { signal });
}
