import { useMemo, useState } from 'react';
import type { Recipe } from '../../graph/recipe.ts';
import { useJob, useView } from '../../store/hooks.ts';
import { recipeKey, recipesInUse } from '../../store/recipe-list.ts';
import { setView } from '../../store/view-store.ts';
import { platesOf, recipeText } from '../../view/plates-of.ts';
import { chartTexts } from '../chart/strings.ts';
import { InHand } from './InHand.tsx';
import { InUse } from './InUse.tsx';
import styles from './Recipes.module.css';
import { SwatchStrip } from './SwatchStrip.tsx';
import { panelTexts } from './strings.ts';
import { type Strip, stripsOf } from './swatch-strips.ts';
import { usePrintColours } from './use-print-colours.ts';

const texts = panelTexts.recipes;
/** Numbers of pieces start anew for each strip. */
const PIECES = 31;

/** The recipe in hand, those in use, and the tints and mixes of the inks in the print's own colours. */
export function Recipes() {
  const job = useJob((each) => each);
  const inHand = useView((state) => state.inHand);
  const plates = useMemo(() => platesOf(job), [job]);
  const found = usePrintColours();
  const colours = typeof found === 'string' ? null : found;
  const [chosen, setChosen] = useState('');
  const used = useMemo(() => recipesInUse(job), [job]);
  const ids = plates.map(({ id }) => id);
  const strips = stripsOf(ids, ids.includes(chosen) ? chosen : null);
  const key = inHand && recipeKey(inHand);
  const inkOf = (id: string) => plates.find((plate) => plate.id === id)!.ink;
  const nameOf = (recipe: Recipe) => recipeText(recipe, plates);
  const takeFrom = (strip: Strip) => (recipe: Recipe) => {
    setChosen(strip.plates[0]!);
    setView({ inHand: recipe });
  };
  return (
    <div className={styles.panel}>
      <InHand recipe={inHand} plates={plates} colours={colours} chosen={chosen} onChoose={setChosen} />
      {typeof found === 'string' && <p role="alert">{texts.cannot(found)}</p>}
      <InUse recipes={used} inHand={key} nameOf={nameOf} colours={colours} />
      <div className={styles.headed}>
        <h3>{texts.tints}</h3>
        <button
          type="button"
          aria-label={chartTexts.openLabel}
          onClick={() => setView({ sheet: 'chart', wiringOpen: false })}
        >
          {chartTexts.open}
        </button>
      </div>
      {strips.map((strip, i) => {
        const [one, other] = strip.plates.map(inkOf) as [string, string?];
        const label = other === undefined ? texts.single(one) : texts.pair(one, other);
        return (
          <div key={strip.plates.join(' ')} className={styles.labelled}>
            <p aria-hidden="true">{label}</p>
            <SwatchStrip
              label={label}
              piece={i * PIECES}
              recipes={strip.recipes}
              inHand={strip.recipes.findIndex((recipe) => recipeKey(recipe) === key)}
              nameOf={nameOf}
              colours={colours}
              onTake={takeFrom(strip)}
            />
          </div>
        );
      })}
      {colours && <p className={styles.notes}>{colours.notes.join(' ')}</p>}
    </div>
  );
}
