import { useRef } from 'react';
import { freshFileName, plainFileName } from '../graph/assets.ts';
import { hashBytes } from '../graph/keys.ts';
import { withSetting } from '../store/edits.ts';
import { useJob } from '../store/hooks.ts';
import { addFile, edit } from '../store/job-store.ts';
import styles from './Controls.module.css';
import type { ControlProps } from './control.ts';
import shared from './Docket.module.css';
import type { PlainField } from './fields.ts';
import { strings } from './strings.ts';

const PICTURES = '.png,.jpg,.jpeg,.webp,.tif,.tiff,.svg';

/** Gives a node a picture as one step; what it is shows when the workers read it. */
async function take(file: File, node: string, field: PlainField): Promise<void> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const hash = hashBytes(bytes);
  addFile(hash, { name: file.name, bytes });
  edit(strings.fileStep(field.title, file.name), (job) => {
    const taken = Object.values(job.assets).map((asset) => asset.file);
    const name = job.assets[hash]?.file ?? freshFileName(plainFileName(file.name), taken);
    const named = { ...job, assets: { ...job.assets, [hash]: { file: name } } };
    return withSetting(named, node, field.name, hash);
  });
}

/** The file a node reads, and ways to choose one or none. A new drawing carries much over: that one is dropped. */
export function FileControl({ field, label, value, node, describedBy, commit }: ControlProps<PlainField>) {
  const input = useRef<HTMLInputElement>(null);
  const file = useJob((job) => (typeof value === 'string' ? job.assets[value]?.file : undefined));
  const isDrawing = useJob((job) =>
    job.graph.nodes.some(({ id, kind }) => id === node && kind === 'line-drawing'),
  );
  if (isDrawing) return <span className={styles.file}>{file ?? strings.dropDrawing}</span>;
  return (
    <span className={styles.byHand}>
      <span className={styles.file}>{file ?? strings.noFile}</span>
      <input
        ref={input}
        type="file"
        hidden
        accept={PICTURES}
        aria-label={label}
        onChange={({ target }) => {
          const chosen = target.files?.[0];
          if (chosen) void take(chosen, node, field);
          target.value = '';
        }}
      />
      <button
        type="button"
        className={shared.word}
        aria-label={strings.chooseFileFor(label)}
        aria-describedby={describedBy}
        onClick={() => input.current!.click()}
      >
        {strings.chooseFile}
      </button>
      {file && (
        <button
          type="button"
          className={shared.word}
          aria-label={strings.noFileFor(label)}
          onClick={() => commit(undefined, strings.noFile)}
        >
          {strings.takeOut}
        </button>
      )}
    </span>
  );
}
