import type { Client } from '../../../workers/client.ts';
import { deliveredInkSet, readInkSet } from '../../docket/ink-edits.ts';
import type { Ink } from '../../graph/inks.ts';
import { useJob } from '../../store/hooks.ts';
import { say } from '../files/files-store.ts';
import styles from './Inks.module.css';
import { inkTexts } from './strings.ts';
import { swapInk } from './use-set.ts';

const texts = inkTexts.shelf;
const WAYS = ['alike', 'tints'] as const;

/** Puts an ink of the shelf in the place of one of the job, in all colourways. */
export function SwapFor({ client, ink }: { client: Client; ink: Ink }) {
  const node = useJob((job) => deliveredInkSet(job.graph));
  const set = readInkSet(node);
  if (!set) return null;
  const swap = (value: string) => {
    const [old, way] = value.split(' ') as [string, (typeof WAYS)[number]];
    swapInk(client, old, ink, way).catch((error: Error) => say(error.message));
  };
  return (
    <select
      className={styles.swap}
      aria-label={texts.swapOf(ink.name)}
      value=""
      onChange={({ target }) => swap(target.value)}
    >
      <option value="">{texts.swap}</option>
      {set.inks.flatMap((old) =>
        WAYS.map((way) => (
          <option key={`${old.id} ${way}`} value={`${old.id} ${way}`}>
            {texts.swapFor(old.name, texts.ways[way])}
          </option>
        )),
      )}
    </select>
  );
}
