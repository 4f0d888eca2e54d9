import { useEffect, useState } from 'react';
import { type Client, startEngine } from '../../workers/client.ts';
import { useJobState, useResults, useView } from '../store/hooks.ts';
import { redo, undo } from '../store/job-store.ts';
import { startSession } from '../store/session.ts';
import { type SheetName, setView } from '../store/view-store.ts';
import { PrintView } from '../view/PrintView.tsx';
import styles from './App.module.css';
import { EyesFilters, eyesFilter } from './EyesFilters.tsx';
import { DeliverButton } from './files/DeliverButton.tsx';
import { FilesLayer } from './files/FilesLayer.tsx';
import { JobMenu } from './files/JobMenu.tsx';
import { openFirstJob } from './files/open-first-job.ts';
import { panels, sheets, views } from './registries.ts';
import type { Column } from './registry.ts';
import { SeenAs } from './SeenAs.tsx';
import { Status } from './Status.tsx';
import { strings } from './strings.ts';
import { useShortcuts } from './use-shortcuts.ts';

/** The engine, once it runs; null before, or a sentence when it cannot. */
function useEngine(): Client | string | null {
  const [engine, setEngine] = useState<Client | string | null>(null);
  useEffect(() => {
    if (!crossOriginIsolated) {
      setEngine(strings.isolation);
      return;
    }
    let stop = () => {};
    startEngine().then(
      (client) => {
        stop = startSession(client);
        setEngine(client);
        void openFirstJob();
      },
      (error: Error) => setEngine(error.message),
    );
    return () => stop();
  }, []);
  return engine;
}

function Panels({ column }: { column: Column }) {
  return panels
    .filter((panel) => panel.column === column)
    .map(({ id, title, Component }) => (
      <section key={id} className={styles.panel} aria-label={title}>
        <Component />
      </section>
    ));
}

function Bar({ client }: { client: Client }) {
  const past = useJobState((state) => state.past.at(-1)?.name);
  const future = useJobState((state) => state.future[0]?.name);
  const showing = useView((state) => state.showing);
  useResults((state) => state.overview);
  const { app } = strings;
  return (
    <header className={styles.bar}>
      <h1 className={styles.name}>{app.name}</h1>
      <JobMenu />
      <button type="button" className={styles.action} disabled={!past} title={past} onClick={undo}>
        {app.undo}
      </button>
      <button type="button" className={styles.action} disabled={!future} title={future} onClick={redo}>
        {app.redo}
      </button>
      <fieldset className={styles.views} aria-label={strings.views.label}>
        {views.map(({ id, title, show }) => {
          const target = show();
          return (
            <button
              key={id}
              type="button"
              aria-pressed={showing.view === id}
              disabled={!target}
              onClick={() => target && setView({ showing: target })}
            >
              {title}
            </button>
          );
        })}
      </fieldset>
      <DeliverButton client={client} />
    </header>
  );
}

function OverPrint({ sheet, client }: { sheet: SheetName; client: Client }) {
  const Component = sheets[sheet];
  return <Component client={client} />;
}

/** The whole window. */
export function App() {
  const engine = useEngine();
  const open = useJobState((state) => state.job !== null);
  const eyes = useView((state) => state.eyes);
  const sheet = useView((state) => state.sheet);
  useShortcuts();
  if (typeof engine === 'string') return <p role="alert">{engine}</p>;
  if (!engine || !open)
    return (
      <>
        <p className={styles.opening} role="status">
          {strings.opening}
        </p>
        <FilesLayer client={engine} />
      </>
    );
  return (
    <div className={styles.window} style={{ '--eyes': eyesFilter(eyes) } as React.CSSProperties}>
      <EyesFilters />
      <Bar client={engine} />
      <aside className={styles.left} aria-label={strings.columns.left}>
        <Panels column="left" />
      </aside>
      <main className={styles.print}>
        <PrintView />
        {sheet && <OverPrint sheet={sheet} client={engine} />}
      </main>
      <aside className={styles.right} aria-label={strings.columns.right}>
        <Panels column="right" />
      </aside>
      <footer className={styles.strip}>
        <Panels column="strip" />
        <SeenAs />
        <Status />
      </footer>
      <FilesLayer client={engine} />
    </div>
  );
}
