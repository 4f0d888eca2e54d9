import { useState } from 'react';
import type { Recipe } from '../../graph/recipe.ts';
import { contrastOf } from '../../ink/contrast.ts';
import { useView } from '../../store/hooks.ts';
import type { PrintColours } from '../panels/print-colours.ts';
import { Torn } from '../panels/Torn.tsx';
import styles from './Chart.module.css';
import { chartTexts as texts } from './strings.ts';

interface CompareProps {
  colours: PrintColours;
  nameOf(recipe: Recipe): string;
}

/** Contrast ratios that lettering needs: W3C, Web Content Accessibility Guidelines 2.2, 1.4.3. */
const SMALL = 4.5;
const LARGE = 3;

const enoughFor = (ratio: number) => (ratio >= SMALL ? 'small' : ratio >= LARGE ? 'large' : 'no');

/** Two recipes side by side, and how far apart they print. */
export function Compare({ colours, nameOf }: CompareProps) {
  const inHand = useView((state) => state.inHand);
  const [held, setHeld] = useState<Recipe | null>(null);
  const both = held && inHand;
  const contrast = both && contrastOf(colours.colourOf(held).lab, colours.colourOf(inHand).lab);
  return (
    <section className={styles.compare} aria-label={texts.compare}>
      <h3>{texts.compare}</h3>
      <span className={styles.pair} aria-hidden="true">
        <Torn piece={71} colour={held ? colours.colourOf(held).css : undefined} />
        <Torn piece={72} colour={inHand ? colours.colourOf(inHand).css : undefined} />
      </span>
      <p role="status">
        {both && contrast ? (
          <>
            <strong>{texts.ratio(contrast.ratio)}</strong>, {texts.enough[enoughFor(contrast.ratio)]};{' '}
            {texts.distance(contrast.distance)}
            <br />
            <span className={styles.quiet}>
              {nameOf(held)} / {nameOf(inHand)}
            </span>
          </>
        ) : (
          <span className={styles.quiet}>{texts.compareHelp}</span>
        )}
      </p>
      {inHand && (
        <button type="button" className={styles.word} onClick={() => setHeld(inHand)}>
          {texts.hold}
        </button>
      )}
      {held && (
        <button type="button" className={styles.word} onClick={() => setHeld(null)}>
          {texts.letGo}
        </button>
      )}
    </section>
  );
}
