import type { Recipe } from '../../graph/recipe.ts';
import { setView } from '../../store/view-store.ts';
import { type NamedPlate, recipeText } from '../../view/plates-of.ts';
import styles from './InHand.module.css';
import type { PrintColours } from './print-colours.ts';
import { panelTexts } from './strings.ts';
import { TintFields } from './TintFields.tsx';
import { Torn } from './Torn.tsx';

const texts = panelTexts.recipes;

interface InHandProps {
  recipe: Recipe | null;
  plates: readonly NamedPlate[];
  colours: PrintColours | null;
  chosen: string;
  onChoose(plate: string): void;
}

/** The recipe in hand: its colour, its tints, and what the print is predicted to look like. */
export function InHand({ recipe, plates, colours, chosen, onChoose }: InHandProps) {
  const tint = (plate: string, value: number) => {
    const { [plate]: _, ...others } = recipe ?? {};
    setView({ inHand: value > 0 ? { ...others, [plate]: value } : others });
  };
  const colour = recipe && colours?.colourOf(recipe);
  return (
    <section className={styles.hand} aria-label={texts.inHand}>
      <div className={styles.head}>
        <h2>{texts.title}</h2>
        {recipe && (
          <button type="button" onClick={() => setView({ inHand: null })}>
            {texts.putDown}
          </button>
        )}
      </div>
      <div className={styles.held}>
        <span className={styles.large} data-empty={recipe === null}>
          {recipe && <Torn piece={3} colour={colour?.css} depth={5} />}
        </span>
        <div className={styles.told}>
          <p className={styles.recipe} title={recipe ? recipeText(recipe, plates) : undefined}>
            {recipe ? texts.short(plates.map(({ id }) => recipe[id] ?? 0)) : texts.nothing}
          </p>
          {recipe === null && <p>{texts.nothingHelp}</p>}
          {colour && (
            <p title={colours?.notes.join('\n')}>
              {texts.lab(colour.lab)}
              <br />
              {colour.hex}
              <br />
              {colour.onScreen ? texts.predicted : texts.offScreen}
            </p>
          )}
        </div>
      </div>
      <TintFields plates={plates} recipe={recipe ?? {}} chosen={chosen} onChoose={onChoose} onTint={tint} />
    </section>
  );
}
