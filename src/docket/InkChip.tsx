import type { Ink } from '../graph/inks.ts';
import { resolveInkLab } from '../ink/ink-lab.ts';
import { screenOf } from '../ink/screen.ts';
import styles from './InkChip.module.css';

/** The screen colour of an ink's solid; nothing when the ink has no readable colour. */
export function screenColour(ink: Ink | undefined): string {
  if (!ink) return 'transparent';
  try {
    return screenOf(resolveInkLab(ink)).hex;
  } catch {
    return 'transparent';
  }
}

/** A small torn piece of paper printed solid in an ink. `tear` chooses among the torn shapes. */
export function InkChip({ ink, tear = 0 }: { ink: Ink | undefined; tear?: number }) {
  return (
    <span
      className={styles.chip}
      data-tear={tear % 3}
      style={{ background: screenColour(ink) }}
      aria-hidden="true"
    />
  );
}
