import { useMemo, useState } from 'react';
import type { Recipe } from '../../graph/recipe.ts';
import { EYES, type Eyes } from '../../ink/seen-as.ts';
import { useJob, useView } from '../../store/hooks.ts';
import { recipeKey } from '../../store/recipe-list.ts';
import { setView } from '../../store/view-store.ts';
import { platesOf, recipeText } from '../../view/plates-of.ts';
import { usePrintColours } from '../panels/use-print-colours.ts';
import { Sheet } from '../sheets/Sheet.tsx';
import { byHue } from './by-hue.ts';
import styles from './Chart.module.css';
import { Compare } from './Compare.tsx';
import { chartStrips } from './chart-recipes.ts';
import { type Row, Rows } from './Rows.tsx';
import { chartTexts as texts } from './strings.ts';

const ORDERS = ['inks', 'hue'] as const;
/** Swatches in a row of a family. */
const ACROSS = 18;

/** Every overprint of the inks with its tint steps, in the print's own colours: take a recipe, weigh two. */
export function Chart() {
  const job = useJob((each) => each);
  const inHand = useView((state) => state.inHand);
  const plates = useMemo(() => platesOf(job), [job]);
  const found = usePrintColours();
  const colours = typeof found === 'string' ? null : found;
  const [order, setOrder] = useState<(typeof ORDERS)[number]>('inks');
  const strips = useMemo(
    () =>
      chartStrips(
        plates.map(({ id }) => id),
        null,
      ),
    [plates],
  );
  const groups = useMemo(() => {
    const inkOf = (id: string) => plates.find((plate) => plate.id === id)!.ink;
    if (order === 'inks')
      return strips.map((strip) => {
        const inks = strip.plates.map(inkOf);
        const title = inks.length === 1 ? texts.alone(inks[0]!) : texts.over(inks);
        return {
          title,
          rows: strip.rows.map((recipes): Row => ({ label: rowLabel(title, recipes), recipes })),
        };
      });
    if (!colours) return [];
    const all = strips.flatMap(({ rows }) => rows.flat());
    return byHue(all, (recipe) => colours.colourOf(recipe).lab).map(({ family, recipes }) => {
      const title = texts.family[family];
      return { title, rows: rowsOf(title, recipes) };
    });
  }, [order, strips, plates, colours]);
  return (
    <Sheet title={texts.title} tools={<Tools order={order} onOrder={setOrder} />}>
      {typeof found === 'string' && <p role="alert">{found}</p>}
      {found === null && <p role="status">{texts.mixing}</p>}
      {colours && <Compare colours={colours} nameOf={(recipe) => recipeText(recipe, plates)} />}
      <div className={styles.groups} data-order={order}>
        {groups.map(({ title, rows }, i) => (
          <Rows
            key={title}
            title={title}
            rows={rows}
            piece={i * 211}
            inHand={inHand && recipeKey(inHand)}
            nameOf={(recipe) => recipeText(recipe, plates)}
            colours={colours}
          />
        ))}
      </div>
      <p className={styles.note}>
        {texts.beyond} {colours?.notes.join(' ')}
      </p>
    </Sheet>
  );
}

function rowLabel(title: string, recipes: readonly Recipe[]): string {
  return texts.row(title, Math.max(...recipes.flatMap((recipe) => Object.values(recipe))));
}

function rowsOf(title: string, recipes: readonly Recipe[]): Row[] {
  const count = Math.ceil(recipes.length / ACROSS);
  return Array.from({ length: count }, (_, row) => ({
    label: texts.familyRow(title, row),
    recipes: recipes.slice(row * ACROSS, (row + 1) * ACROSS),
    across: ACROSS,
  }));
}

interface ToolsProps {
  order: (typeof ORDERS)[number];
  onOrder(order: (typeof ORDERS)[number]): void;
}

function Tools({ order, onOrder }: ToolsProps) {
  const eyes = useView((state) => state.eyes);
  return (
    <>
      <fieldset className={styles.orders}>
        <legend>{texts.order}</legend>
        {ORDERS.map((each) => (
          <button key={each} type="button" aria-pressed={order === each} onClick={() => onOrder(each)}>
            {texts.orders[each]}
          </button>
        ))}
      </fieldset>
      <label className={styles.eyes}>
        {texts.seen}
        <select value={eyes} onChange={(event) => setView({ eyes: event.target.value as Eyes })}>
          {EYES.map((each) => (
            <option key={each} value={each}>
              {texts.eyes[each]}
            </option>
          ))}
        </select>
      </label>
    </>
  );
}
