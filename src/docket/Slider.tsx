import { type KeyboardEvent, useRef } from 'react';
import { handMovesUntil, newGesture } from './apply.ts';
import styles from './Controls.module.css';
import type { NumberField } from './fields.ts';
import { fromPlace, shown, snapped, stepOf, toPlace } from './numbers.ts';
import { strings } from './strings.ts';

const ENDS = 1000;

const ARROWS: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowUp: 1,
  ArrowLeft: -1,
  ArrowDown: -1,
  PageUp: 10,
  PageDown: -10,
};

export interface SliderProps {
  field: NumberField;
  value: number;
  commit(value: number, words: string, gesture: string): void;
}

/** A ruler to drag along; one drag is one undo step. Small values get more room where the usual value is small. */
export function Slider({ field, value, commit }: SliderProps) {
  const gesture = useRef('');
  const go = (next: number) => {
    if (next !== value) commit(next, shown(next, field.unit), gesture.current);
  };
  const press = (event: KeyboardEvent) => {
    const steps = ARROWS[event.key];
    if (!steps) return;
    event.preventDefault();
    if (!event.repeat) handMovesUntil('keyup');
    go(snapped(field, value + steps * (event.shiftKey ? 10 : 1) * stepOf(field)));
  };
  const place = toPlace(field, value);
  return (
    <input
      type="range"
      className={styles.slider}
      aria-label={strings.slider(field.title)}
      aria-valuetext={shown(value, field.unit)}
      min={0}
      max={ENDS}
      step="any"
      value={place * ENDS}
      style={{ '--place': place } as React.CSSProperties}
      onFocus={() => {
        gesture.current = newGesture();
      }}
      onPointerDown={() => {
        gesture.current = newGesture();
        handMovesUntil('pointerup');
      }}
      onChange={(event) => go(fromPlace(field, Number(event.target.value) / ENDS))}
      onKeyDown={press}
    />
  );
}
