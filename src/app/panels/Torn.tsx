import { useMemo } from 'react';
import styles from './Recipes.module.css';
import { tornOutline } from './torn.ts';

interface TornProps {
  /** Its number: pieces of different numbers are torn differently. */
  piece: number;
  /** The print colour; none while it is not known. */
  colour: string | undefined;
  depth?: number;
  /** Whether the screen cannot show the colour: a corner is turned down. */
  beyond?: boolean;
}

/** A torn piece of print: the colour, with the white of the torn sheet along its edges. */
export function Torn({ piece, colour, depth = 4, beyond = false }: TornProps) {
  const sheet = useMemo(() => tornOutline(piece, depth), [piece, depth]);
  const ink = useMemo(() => tornOutline(piece + 7919, depth), [piece, depth]);
  return (
    <span className={styles.torn} style={{ clipPath: sheet }} aria-hidden="true">
      <span style={{ clipPath: ink, background: colour ?? 'transparent' }} />
      {beyond && <span className={styles.corner} />}
    </span>
  );
}
