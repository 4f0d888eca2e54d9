import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { filesStore, say } from './files-store.ts';
import styles from './JobMenu.module.css';
import { forgetJob, keptJobs } from './keep.ts';
import { openKept } from './open-kept.ts';
import { files as texts } from './strings.ts';
import type { KeptJob } from './vault.ts';

const day = new Intl.DateTimeFormat('en', {
  day: 'numeric',
  month: 'short',
  hour: '2-digit',
  minute: '2-digit',
});

/** The jobs that this browser keeps, other than the open one. */
export function RecentJobs({ run }: { run(action: () => Promise<void>): void }) {
  const openId = useStore(filesStore, (state) => state.id);
  const [jobs, setJobs] = useState<KeptJob[] | null>(null);
  useEffect(() => {
    let shown = true;
    keptJobs().then(
      (kept) => shown && setJobs(kept),
      () => shown && setJobs([]),
    );
    return () => {
      shown = false;
    };
  }, []);
  const others = jobs?.filter(({ id }) => id !== openId) ?? [];
  const forget = (id: string) => {
    setJobs(others.filter((job) => job.id !== id));
    forgetJob(id).catch(() => {});
  };
  return (
    <>
      <h3 className={styles.heading}>{texts.menu.recent}</h3>
      {jobs !== null && others.length === 0 && <p className={styles.none}>{texts.menu.noneRecent}</p>}
      <ul className={styles.recent}>
        {others.map((job) => (
          <li key={job.id}>
            <button type="button" className={styles.job} onClick={() => run(() => open(job))}>
              <Thumbnail png={job.thumbnail} />
              <span>
                {job.name}
                <small>{day.format(job.savedAt)}</small>
              </span>
            </button>
            <button
              type="button"
              className={styles.forget}
              aria-label={texts.menu.forget(job.name)}
              title={texts.menu.forget(job.name)}
              onClick={() => forget(job.id)}
            >
              <svg viewBox="0 0 10 10" width="10" height="10" aria-hidden="true">
                <path d="M1 1 9 9M9 1 1 9" stroke="currentColor" strokeWidth="1.2" />
              </svg>
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

async function open({ id, name }: KeptJob): Promise<void> {
  try {
    if (!(await openKept(id))) say(texts.cannotOpen(name, texts.menu.gone));
  } catch (error) {
    say(texts.cannotOpen(name, (error as Error).message));
  }
}

function Thumbnail({ png }: { png: Uint8Array<ArrayBuffer> | null }) {
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    if (!png) return;
    const made = URL.createObjectURL(new Blob([png], { type: 'image/png' }));
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [png]);
  return <span className={styles.thumbnail}>{url && <img src={url} alt="" />}</span>;
}
