import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import type { Recipe } from '../../graph/recipe.ts';
import type { PrintColours } from './print-colours.ts';
import styles from './Recipes.module.css';
import { panelTexts } from './strings.ts';
import { Torn } from './Torn.tsx';

interface SwatchStripProps {
  label: string;
  /** Number of its first piece. */
  piece: number;
  recipes: readonly Recipe[];
  /** Place of the recipe in hand; -1 when it is not among these. */
  inHand: number;
  nameOf(recipe: Recipe): string;
  colours: PrintColours | null;
  onTake(recipe: Recipe): void;
}

/** How far a finger or pointer slides before it takes what it is over, px. */
const SLIDE = 6;

const WAYS: Record<string, number> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/** A row of torn swatches: a press takes one, a slide along the row takes each it comes to, arrow keys too. */
export function SwatchStrip({ label, piece, recipes, inHand, nameOf, colours, onTake }: SwatchStripProps) {
  const pressedAt = useRef<number | null>(null);
  const take = (at: number) => at !== inHand && onTake(recipes[at]!);
  const slide = (event: PointerEvent<HTMLDivElement>) => {
    const from = pressedAt.current;
    if (from === null || event.buttons === 0 || Math.abs(event.clientX - from) < SLIDE) return;
    const { left, width } = event.currentTarget.getBoundingClientRect();
    const at = Math.floor(((event.clientX - left) / width) * recipes.length);
    take(Math.min(recipes.length - 1, Math.max(0, at)));
  };
  const step = (event: KeyboardEvent<HTMLDivElement>) => {
    const way = WAYS[event.key];
    if (way === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    const buttons = [...event.currentTarget.querySelectorAll('button')];
    const here = buttons.indexOf(document.activeElement as HTMLButtonElement);
    const at = (here + way + recipes.length) % recipes.length;
    buttons[at]!.focus();
    take(at);
  };
  return (
    <div
      className={styles.strip}
      role="toolbar"
      aria-label={label}
      onKeyDown={step}
      onPointerDown={(event) => {
        pressedAt.current = event.clientX;
      }}
      onPointerMove={slide}
      onPointerUp={() => {
        pressedAt.current = null;
      }}
    >
      {recipes.map((recipe, i) => {
        const colour = colours?.colourOf(recipe);
        const beyond = colour?.onScreen === false;
        const name = beyond ? panelTexts.recipes.beyond(nameOf(recipe)) : nameOf(recipe);
        return (
          <button
            key={nameOf(recipe)}
            type="button"
            className={styles.swatch}
            aria-pressed={i === inHand}
            aria-label={name}
            title={name}
            tabIndex={i === Math.max(0, inHand) ? 0 : -1}
            onClick={() => take(i)}
          >
            <Torn piece={piece + i} colour={colour?.css} beyond={beyond} />
          </button>
        );
      })}
    </div>
  );
}
