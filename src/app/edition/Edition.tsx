import { useId, useState } from 'react';
import type { Client } from '../../../workers/client.ts';
import { plainFileName } from '../../graph/assets.ts';
import { useJob } from '../../store/hooks.ts';
import { download } from '../files/browser-files.ts';
import { files as fileTexts } from '../files/strings.ts';
import { useDelivery } from '../files/use-delivery.ts';
import { Sheet } from '../sheets/Sheet.tsx';
import styles from './Edition.module.css';
import { editionTexts as texts } from './strings.ts';
import { type PictureState, usePicture } from './use-picture.ts';

interface WholeProps {
  label: string;
  least: number;
  most: number;
  value: number;
  unit?: string;
  onChange(value: number): void;
}

/** A whole number; what is out of range is told and not taken. */
function Whole({ label, least, most, value, unit, onChange }: WholeProps) {
  const [text, setText] = useState<string | null>(null);
  const note = useId();
  const number = Number(text ?? value);
  const wrong = text !== null && !(Number.isInteger(number) && number >= least && number <= most);
  return (
    <label className={styles.field}>
      <span>{label}</span>
      <input
        inputMode="numeric"
        autoComplete="off"
        value={text ?? value}
        aria-invalid={wrong}
        aria-describedby={wrong ? note : undefined}
        onChange={({ target }) => {
          setText(target.value);
          const next = Number(target.value);
          if (target.value.trim() !== '' && Number.isInteger(next) && next >= least && next <= most)
            onChange(next);
        }}
        onBlur={() => setText(null)}
      />
      {unit}
      {wrong && (
        <span id={note} role="alert" className={styles.wrong}>
          {texts.wrong(least, most)}
        </span>
      )}
    </label>
  );
}

function Running({
  picture,
}: {
  picture: Pick<PictureState, 'running' | 'progress' | 'failure' | 'cancel'>;
}) {
  const { running, progress, failure, cancel } = picture;
  if (!running)
    return failure ? (
      <p role="alert" className={styles.wrong}>
        {failure}
      </p>
    ) : null;
  return (
    <p className={styles.running} role="status">
      {texts.making}
      <progress
        aria-label={texts.making}
        max={progress?.of ?? 1}
        {...(progress ? { value: progress.done } : {})}
      />
      <button type="button" className={styles.word} onClick={cancel}>
        {fileTexts.cancel}
      </button>
    </p>
  );
}

/** A run of sheets: all small, one at full size, all in one PDF. */
export function Edition({ client }: { client: Client }) {
  const job = useJob((each) => each);
  const [sheets, setSheets] = useState(12);
  const [seed, setSeed] = useState(1);
  const [numbered, setNumbered] = useState(true);
  const [sheet, setSheet] = useState(1);
  const [ppi, setPpi] = useState(300);
  const [shown, setShown] = useState<string | null>(null);
  const run = usePicture();
  const one = usePicture();
  const pdf = useDelivery();
  const stem = plainFileName(`${job.name} - edition`);
  const chosen = Math.min(sheet, sheets);
  const input = { job, sheets, seed, numbered, full: [] as number[], contact: false, pdfPpi: null };
  const showRun = () =>
    run.make(async (options) => {
      one.clear();
      const { files } = await client.run('edition', { ...input, contact: true }, options);
      setShown(texts.contact(sheets));
      return files[0]!.bytes;
    });
  const showOne = () =>
    one.make(async (options) => {
      const { files } = await client.run('edition', { ...input, full: [chosen] }, options);
      return files[0]!.bytes;
    });
  const deliver = () =>
    pdf.start({
      name: `${stem}.pdf`,
      type: 'application/pdf',
      make: async (options) => {
        const { files } = await client.run('edition', { ...input, pdfPpi: ppi }, options);
        return new Uint8Array(files[0]!.bytes);
      },
    });
  const busy = run.running || one.running || pdf.running;
  return (
    <Sheet title={texts.title}>
      <p className={styles.quiet}>{texts.help}</p>
      <div className={styles.row}>
        <Whole label={texts.sheets} least={1} most={10_000} value={sheets} onChange={setSheets} />
        <Whole label={texts.seed} least={0} most={99_999} value={seed} onChange={setSeed} />
        <button type="button" className={styles.word} onClick={() => setSeed(seed + 1)}>
          {texts.another}
        </button>
        <label className={styles.check}>
          <input type="checkbox" checked={numbered} onChange={({ target }) => setNumbered(target.checked)} />
          {texts.numbered}
        </label>
        <button type="button" className={styles.main} disabled={busy} onClick={showRun}>
          {texts.make}
        </button>
      </div>
      <div className={styles.row}>
        <Whole label={texts.sheet} least={1} most={sheets} value={chosen} onChange={setSheet} />
        <button type="button" className={styles.plain} disabled={busy} onClick={showOne}>
          {texts.show}
        </button>
        <span className={styles.gap} />
        <Whole label={texts.pdfPpi} least={20} most={2400} value={ppi} unit={texts.ppi} onChange={setPpi} />
        <button type="button" className={styles.plain} disabled={busy} onClick={deliver}>
          {texts.pdf}
        </button>
      </div>
      <Running picture={run} />
      <Running picture={one} />
      <Running picture={{ ...pdf, failure: pdf.failed ? pdf.said : null }} />
      {!pdf.failed && pdf.said && !pdf.running && <p role="status">{pdf.said}</p>}
      {one.url ? (
        <>
          <div className={styles.row}>
            <button type="button" className={styles.word} onClick={one.clear}>
              {texts.back}
            </button>
            <button
              type="button"
              className={styles.word}
              onClick={() => one.bytes && download(`${stem} ${chosen}.png`, one.bytes, 'image/png')}
            >
              {texts.keepPng}
            </button>
          </div>
          <img className={styles.full} src={one.url} alt={texts.shown(chosen, sheets)} />
        </>
      ) : (
        run.url && <img className={styles.contact} src={run.url} alt={shown ?? ''} />
      )}
    </Sheet>
  );
}
