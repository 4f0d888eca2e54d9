import { useResults } from '../store/hooks.ts';
import styles from './App.module.css';
import { strings } from './strings.ts';

/** What the workers do or have done, in one line. */
export function Status() {
  const running = useResults((state) => state.running);
  const failure = useResults((state) => state.failure);
  const seconds = useResults((state) => state.seconds);
  const megabytes = useResults((state) => Math.round(state.liveBytes / 1e6));
  if (failure) return <p role="alert">{failure}</p>;
  if (running)
    return (
      <p className={styles.status} role="status">
        {running.progress ? `${running.progress.done + 1} / ${running.progress.of}` : strings.opening}{' '}
        <button type="button" className={styles.action} onClick={running.cancel}>
          {strings.app.cancel}
        </button>
      </p>
    );
  if (seconds === null) return null;
  return (
    <p className={styles.status} role="status">
      {seconds.toFixed(1)} s · {megabytes} MB
    </p>
  );
}
