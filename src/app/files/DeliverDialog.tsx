import { useState } from 'react';
import type { Client, RenderFormat } from '../../../workers/client.ts';
import { plainFileName } from '../../graph/assets.ts';
import { colourwayOf } from '../../store/edits.ts';
import { useJob, useResults } from '../../store/hooks.ts';
import { ClientPictureForm, type PictureWish } from './ClientPictureForm.tsx';
import styles from './DeliverButton.module.css';
import sheet from './Dialog.module.css';
import { Dialog } from './Dialog.tsx';
import { faultsOf, pressZip, USUAL_FORMATS } from './deliver.ts';
import { PressFormats } from './PressFormats.tsx';
import { openPressSheet, sheetNodeOf } from './press-sheet-edits.ts';
import { files as texts } from './strings.ts';
import { type Delivery, useDelivery } from './use-delivery.ts';

/** Kinds of file that film is exposed from. */
const FILM: readonly RenderFormat[] = ['grey-pdf', 'tiff'];

/** What is wrong, then the two things that can be delivered. */
export function DeliverDialog({ client, onClose }: { client: Client; onClose(): void }) {
  const job = useJob((each) => each);
  const [wish, setWish] = useState<PictureWish | null>(null);
  const [formats, setFormats] = useState<readonly RenderFormat[]>(USUAL_FORMATS);
  const { running, progress, said, failed, start, cancel } = useDelivery();
  const stem = plainFileName(`${job.name} - ${colourwayOf(job).name}`);
  const press = (): Delivery => ({
    name: `${stem}.zip`,
    type: 'application/zip',
    make: (options) => pressZip(client, job, formats, options),
  });
  const picture = ({ widthPx, ground }: PictureWish): Delivery => ({
    name: `${stem}.png`,
    type: 'image/png',
    make: async (options) => {
      const made = await client.run('clientPicture', { job, widthPx, ground }, options);
      return made.files[0]!.bytes as Uint8Array<ArrayBuffer>;
    },
  });
  return (
    <Dialog title={texts.deliver.title} onLetBe={onClose}>
      <p className={styles.what}>{texts.deliver.what(job.name, colourwayOf(job).name)}</p>
      <Faults />
      <section className={styles.part}>
        <h3>{texts.deliver.press}</h3>
        <p className={sheet.quiet}>{texts.deliver.pressHelp}</p>
        <PressFormats chosen={formats} onChoose={setFormats} />
        <p className={sheet.quiet}>{sheetNodeOf(job) === null && texts.deliver.sheetNone}</p>
        <button
          type="button"
          className={sheet.plain}
          onClick={() => {
            openPressSheet(job);
            onClose();
          }}
        >
          {sheetNodeOf(job) === null ? texts.deliver.sheetAdd : texts.deliver.sheetSet}
        </button>
        {formats.some((format) => FILM.includes(format)) && (
          <p className={sheet.quiet}>{texts.deliver.film}</p>
        )}
        <button
          type="button"
          className={sheet.main}
          disabled={running || formats.length === 0}
          onClick={() => start(press())}
        >
          {texts.deliver.pressGo}
        </button>
        {formats.length === 0 && <p className={sheet.fault}>{texts.deliver.nothing}</p>}
      </section>
      <section className={styles.part}>
        <h3>{texts.deliver.picture}</h3>
        <ClientPictureForm onWish={setWish} />
        <button
          type="button"
          className={sheet.main}
          disabled={running || !wish}
          onClick={() => wish && start(picture(wish))}
        >
          {texts.deliver.pictureGo}
        </button>
      </section>
      <div className={`${sheet.actions} ${styles.foot}`}>
        <p role="status" className={failed ? sheet.fault : sheet.quiet}>
          {running ? texts.deliver.running : said}
        </p>
        {running && (
          <progress
            aria-label={texts.deliver.running}
            max={progress?.of ?? 1}
            {...(progress ? { value: progress.done } : {})}
          />
        )}
        <button type="button" className={sheet.plain} onClick={running ? cancel : onClose}>
          {running ? texts.cancel : texts.close}
        </button>
      </div>
    </Dialog>
  );
}

function Faults() {
  const overview = useResults((state) => state.overview?.complaints);
  const picture = useResults((state) => state.picture?.complaints);
  const regions = useResults((state) => state.regions?.complaints);
  const faults = faultsOf([overview, regions, picture]);
  if (faults.length === 0) return null;
  return (
    <section className={styles.faults}>
      <h3>{texts.deliver.faults(faults.length)}</h3>
      <ul>
        {faults.map(({ message, severity }) => (
          <li key={message} className={severity === 'error' ? sheet.fault : undefined}>
            {message}
          </li>
        ))}
      </ul>
    </section>
  );
}
