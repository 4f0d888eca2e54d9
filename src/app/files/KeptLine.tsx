import { useStore } from 'zustand';
import { useJob } from '../../store/hooks.ts';
import { filesStore } from './files-store.ts';
import { isSaved } from './is-saved.ts';
import styles from './JobMenu.module.css';
import { files as texts } from './strings.ts';

/** Where the job is safe: in this browser, in a file. */
export function KeptLine() {
  const job = useJob((each) => each);
  const kept = useStore(filesStore, (state) => state.kept);
  const saved = useStore(filesStore, (state) => state.saved);
  const example = useStore(filesStore, (state) => state.example);
  const file = useStore(filesStore, (state) => state.handle?.name);
  if (isSaved(job, example)) return <p className={styles.kept}>{texts.kept.example}</p>;
  return (
    <p className={styles.kept}>
      {texts.kept[kept]}
      {' · '}
      {inFile(file ?? null, isSaved(job, saved))}
    </p>
  );
}

function inFile(file: string | null, same: boolean): string {
  if (file === null) return same ? texts.kept.download : texts.kept.noFile;
  return same ? texts.kept.inFile(file) : texts.kept.changed(file);
}
