import { useMemo, useState } from 'react';
import type { Client } from '../../../workers/client.ts';
import type { Job } from '../../graph/job.ts';
import { useJob } from '../../store/hooks.ts';
import { edit } from '../../store/job-store.ts';
import { showColourway } from '../panels/colourway-edits.ts';
import { panelTexts } from '../panels/strings.ts';
import { Sheet } from '../sheets/Sheet.tsx';
import styles from './Colourways.module.css';
import { deliverContactSheet } from './deliver-contact-sheet.ts';
import { ProofCanvas } from './ProofCanvas.tsx';
import { colourwayTexts } from './strings.ts';

const texts = colourwayTexts.compare;
const WAYS = ['slider', 'beside', 'all'] as const;
type Way = (typeof WAYS)[number];

/** Scales and sizes of the proofs: large ones of two, small ones of all. */
const LARGE = { scale: 4, longest: 640 } as const;
const SMALL = { scale: 8, longest: 240 } as const;

const inColourway = (job: Job, colourway: string): Job => ({ ...job, colourway });

/** Two colourways under a slider or side by side, or all of them; and all on one contact sheet. */
export function Compare({ client }: { client: Client }) {
  const job = useJob((each) => each);
  const { colourways } = job;
  const [way, setWay] = useState<Way>('slider');
  const [left, setLeft] = useState(job.colourway);
  const [right, setRight] = useState(colourways.find(({ id }) => id !== job.colourway)?.id ?? job.colourway);
  const nameOf = (id: string) => colourways.find((each) => each.id === id)?.name ?? '';
  const jobs = useMemo(
    () => new Map(colourways.map(({ id }) => [id, inColourway(job, id)])),
    [job, colourways],
  );
  const choose = (label: string, value: string, set: (id: string) => void) => (
    <label className={styles.choose}>
      {label}
      <select value={value} onChange={({ target }) => set(target.value)}>
        {colourways.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
  const proof = (id: string) => (
    <ProofCanvas client={client} job={jobs.get(id) ?? job} label={nameOf(id)} {...LARGE} />
  );
  return (
    <Sheet
      title={texts.title}
      tools={
        <fieldset className={styles.ways} aria-label={texts.way}>
          {WAYS.map((each) => (
            <button key={each} type="button" aria-pressed={way === each} onClick={() => setWay(each)}>
              {texts.ways[each]}
            </button>
          ))}
        </fieldset>
      }
    >
      {way !== 'all' && (
        <div className={styles.chosen}>
          {choose(texts.left, left, setLeft)}
          {choose(texts.right, right, setRight)}
        </div>
      )}
      {way === 'slider' && <UnderSlider left={proof(left)} right={proof(right)} />}
      {way === 'beside' && (
        <div className={styles.beside}>
          {proof(left)}
          {proof(right)}
        </div>
      )}
      {way === 'all' && (
        <>
          <ul className={styles.all}>
            {colourways.map(({ id, name }) => (
              <li key={id}>
                <button
                  type="button"
                  aria-label={texts.show(name)}
                  aria-pressed={id === job.colourway}
                  onClick={() =>
                    edit(panelTexts.colourways.steps.show(name), (before) => showColourway(before, id))
                  }
                >
                  <ProofCanvas client={client} job={jobs.get(id)!} label={name} {...SMALL} />
                  <span>{name}</span>
                </button>
              </li>
            ))}
          </ul>
          <button type="button" className={styles.main} onClick={() => void deliverContactSheet(client, job)}>
            {texts.contact}
          </button>
        </>
      )}
    </Sheet>
  );
}

function UnderSlider({ left, right }: { left: React.ReactNode; right: React.ReactNode }) {
  const [share, setShare] = useState(50);
  return (
    <div className={styles.under} style={{ '--share': `${share}%` } as React.CSSProperties}>
      <div>{right}</div>
      <div className={styles.over}>{left}</div>
      <input
        type="range"
        min={0}
        max={100}
        step={1}
        value={share}
        aria-label={texts.slider}
        onChange={({ target }) => setShare(Number(target.value))}
      />
    </div>
  );
}
