import type { PaletteEntry } from '../../graph/proposal-rules.ts';
import { recipeKey } from '../../store/recipe-list.ts';
import { type NamedPlate, recipeText } from '../../view/plates-of.ts';
import type { PrintColours } from '../panels/print-colours.ts';
import { Torn } from '../panels/Torn.tsx';
import styles from './Colourways.module.css';
import { shareOf } from './share-text.ts';
import { colourwayTexts } from './strings.ts';

const texts = colourwayTexts.proposals;

interface PaletteListProps {
  palette: readonly PaletteEntry[];
  plates: readonly NamedPlate[];
  colours: PrintColours | null;
  onChange(palette: readonly PaletteEntry[]): void;
}

/** Recipes that a proposal may use, each with the share of the sheet it should cover, if any. */
export function PaletteList({ palette, plates, colours, onChange }: PaletteListProps) {
  return (
    <>
      <h3>{texts.palette}</h3>
      <ul className={styles.palette}>
        {palette.map((entry, i) => {
          const name = recipeText(entry.recipe, plates);
          return (
            <li key={recipeKey(entry.recipe)} title={name}>
              <span className={styles.piece}>
                <Torn piece={300 + i} colour={colours?.colourOf(entry.recipe).css} />
              </span>
              <input
                inputMode="decimal"
                aria-label={texts.share(name)}
                placeholder={texts.any}
                defaultValue={entry.sharePercent ?? ''}
                onBlur={({ target }) =>
                  onChange(palette.with(i, { recipe: entry.recipe, ...shareOf(target.value) }))
                }
              />
              <span aria-hidden="true">%</span>
              <button
                type="button"
                aria-label={texts.leaveOut(name)}
                onClick={() => onChange(palette.toSpliced(i, 1))}
              >
                {texts.out}
              </button>
            </li>
          );
        })}
      </ul>
    </>
  );
}
