import { useState } from 'react';
import type { Recipe } from '../../graph/recipe.ts';
import { recipeKey } from '../../store/recipe-list.ts';
import { setView } from '../../store/view-store.ts';
import type { PrintColours } from './print-colours.ts';
import styles from './Recipes.module.css';
import { panelTexts } from './strings.ts';
import { Torn } from './Torn.tsx';

const texts = panelTexts.recipes;
/** So many have a number key. */
const NUMBERED = 9;
/** Pieces here are torn unlike those of the strips. */
const FIRST_PIECE = 5000;

interface InUseProps {
  recipes: readonly Recipe[];
  /** Key of the recipe in hand. */
  inHand: string | null;
  nameOf(recipe: Recipe): string;
  colours: PrintColours | null;
}

/** The recipes that regions print, those of most regions first; the first nine by number, the rest on demand. */
export function InUse({ recipes, inHand, nameOf, colours }: InUseProps) {
  const [all, setAll] = useState(false);
  if (recipes.length === 0) return null;
  const more = recipes.length - NUMBERED;
  const shown = all ? recipes : recipes.slice(0, NUMBERED);
  return (
    <>
      <h3>{texts.inUse}</h3>
      <ol className={styles.used}>
        {shown.map((recipe, i) => (
          <li key={recipeKey(recipe)}>
            <button
              type="button"
              className={styles.chip}
              aria-pressed={recipeKey(recipe) === inHand}
              aria-label={texts.numbered(i + 1, nameOf(recipe))}
              title={nameOf(recipe)}
              onClick={() => setView({ inHand: recipe })}
            >
              <Torn piece={FIRST_PIECE + i} colour={colours?.colourOf(recipe).css} />
              {i < NUMBERED && <span>{i + 1}</span>}
            </button>
          </li>
        ))}
        {more > 0 && (
          <li className={styles.more}>
            <button type="button" aria-expanded={all} onClick={() => setAll(!all)}>
              {all ? texts.fewer : texts.more(more)}
            </button>
          </li>
        )}
      </ol>
    </>
  );
}
