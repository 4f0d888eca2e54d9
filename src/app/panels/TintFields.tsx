import { type KeyboardEvent, useState } from 'react';
import type { Recipe } from '../../graph/recipe.ts';
import type { NamedPlate } from '../../view/plates-of.ts';
import styles from './InHand.module.css';
import { panelTexts } from './strings.ts';
import { nearestStop, nextStop, STOPS, tintOf } from './tint-steps.ts';

const texts = panelTexts.recipes;

interface TintFieldsProps {
  plates: readonly NamedPlate[];
  recipe: Recipe;
  /** The plate whose usual tints are offered below. */
  chosen: string;
  onChoose(plate: string): void;
  onTint(plate: string, tint: number): void;
}

/** A tint for each plate: typed, stepped with arrow keys, or slid along the usual tints. */
export function TintFields({ plates, recipe, chosen, onChoose, onTint }: TintFieldsProps) {
  const active = plates.find(({ id }) => id === chosen) ?? plates[0];
  if (!active) return null;
  const tint = recipe[active.id] ?? 0;
  const stop = nearestStop(tint);
  return (
    <>
      <div className={styles.fields}>
        {plates.map((plate) => (
          <TintField
            key={plate.id}
            plate={plate}
            tint={recipe[plate.id] ?? 0}
            active={plate === active}
            onFocus={() => onChoose(plate.id)}
            onTint={(value) => onTint(plate.id, value)}
          />
        ))}
      </div>
      <input
        type="range"
        className={styles.stops}
        style={{ '--thumb': active.colour } as React.CSSProperties}
        aria-label={texts.stopsOf(active.ink)}
        aria-valuetext={texts.percent(STOPS[stop]!)}
        min={0}
        max={STOPS.length - 1}
        step={1}
        value={stop}
        onChange={(event) => onTint(active.id, STOPS[Number(event.target.value)]!)}
      />
    </>
  );
}

interface TintFieldProps {
  plate: NamedPlate;
  tint: number;
  active: boolean;
  onFocus(): void;
  onTint(tint: number): void;
}

function TintField({ plate, tint, active, onFocus, onTint }: TintFieldProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const type = (text: string) => {
    setTyped(text);
    const value = tintOf(text);
    if (value !== null) onTint(value);
  };
  const step = (event: KeyboardEvent) => {
    if (event.key === 'Enter') setTyped(null);
    if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
    event.preventDefault();
    setTyped(null);
    onTint(nextStop(tint, event.key === 'ArrowUp' ? 1 : -1));
  };
  return (
    <label className={styles.field} data-active={active} title={plate.ink}>
      <span className={styles.dab} style={{ background: plate.colour }} />
      <input
        inputMode="decimal"
        autoComplete="off"
        aria-label={texts.tintOf(plate.ink)}
        value={typed ?? texts.tint(tint)}
        onFocus={(event) => {
          event.target.select();
          onFocus();
        }}
        onBlur={() => setTyped(null)}
        onChange={(event) => type(event.target.value)}
        onKeyDown={step}
      />
    </label>
  );
}
