import type { Recipe } from '../../graph/recipe.ts';
import { recipeKey } from '../../store/recipe-list.ts';
import { setView } from '../../store/view-store.ts';
import type { PrintColours } from '../panels/print-colours.ts';
import { SwatchStrip } from '../panels/SwatchStrip.tsx';
import styles from './Chart.module.css';

export interface Row {
  label: string;
  recipes: readonly Recipe[];
  /** So many would fill the row; all of them when left out. */
  across?: number;
}

interface RowsProps {
  title: string;
  rows: readonly Row[];
  /** Number of the first torn piece. */
  piece: number;
  /** Key of the recipe in hand. */
  inHand: string | null;
  nameOf(recipe: Recipe): string;
  colours: PrintColours | null;
}

/** Strips that belong together, laid on one another like torn sheets. */
export function Rows({ title, rows, piece, inHand, nameOf, colours }: RowsProps) {
  return (
    <section className={styles.group} aria-label={title}>
      <h3>{title}</h3>
      {rows.map(({ label, recipes, across = recipes.length }, row) => (
        <div key={label} className={styles.row} style={{ width: `${(100 * recipes.length) / across}%` }}>
          <SwatchStrip
            label={label}
            piece={piece + row * 31}
            recipes={recipes}
            inHand={recipes.findIndex((recipe) => recipeKey(recipe) === inHand)}
            nameOf={nameOf}
            colours={colours}
            onTake={(recipe) => setView({ inHand: recipe })}
          />
        </div>
      ))}
    </section>
  );
}
