import type { RenderFormat } from '../../../workers/client.ts';
import styles from './DeliverButton.module.css';
import sheet from './Dialog.module.css';
import { files as texts } from './strings.ts';

/** What can be delivered, as it is listed. */
const LISTED: readonly RenderFormat[] = [
  'png',
  'grey-pdf',
  'pdf',
  'tiff',
  'ora',
  'job-sheet',
  'proof',
  'proof-jpeg',
  'proof-pdf',
];

interface PressFormatsProps {
  chosen: readonly RenderFormat[];
  onChoose(formats: readonly RenderFormat[]): void;
}

/** The kinds of file that go to the press, each with what it is for. */
export function PressFormats({ chosen, onChoose }: PressFormatsProps) {
  const toggle = (format: RenderFormat) =>
    onChoose(LISTED.filter((each) => (each === format) !== chosen.includes(each)));
  return (
    <fieldset className={styles.formats}>
      <legend className={sheet.quiet}>{texts.deliver.formats}</legend>
      {LISTED.map((format) => {
        const { title, help } = texts.deliver.format[format];
        return (
          <label key={format}>
            <input type="checkbox" checked={chosen.includes(format)} onChange={() => toggle(format)} />
            <span>
              {title}
              <small>{help}</small>
            </span>
          </label>
        );
      })}
    </fieldset>
  );
}
