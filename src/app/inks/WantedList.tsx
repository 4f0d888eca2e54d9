import { displayOf } from '../../ink/display.ts';
import { Torn } from '../panels/Torn.tsx';
import styles from './Inks.module.css';
import { inkTexts } from './strings.ts';
import type { Wanted } from './wanted-colours.ts';

const texts = inkTexts.sets;

interface WantedListProps {
  wanted: readonly Wanted[];
  /** Takes a colour away; null where they are not picked by hand. */
  drop: ((at: number) => void) | null;
}

/** Colours wanted, as torn pieces. */
export function WantedList({ wanted, drop }: WantedListProps) {
  return (
    <ul className={styles.wanted}>
      {wanted.map(({ lab }, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two colours may be the same
        <li key={i}>
          <span className={styles.piece}>
            <Torn piece={900 + i} colour={displayOf(lab, 'srgb').css} />
          </span>
          {drop && (
            <button type="button" aria-label={texts.dropColour(i + 1)} onClick={() => drop(i)}>
              {texts.drop}
            </button>
          )}
        </li>
      ))}
    </ul>
  );
}
