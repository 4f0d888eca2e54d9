import styles from './regions/Regions.module.css';

interface FoldHeadProps {
  title: string;
  open: boolean;
  onToggle(): void;
  /** What stands at its end, such as how many there are. */
  children?: React.ReactNode;
}

/** The heading of a panel that folds. */
export function FoldHead({ title, open, onToggle, children }: FoldHeadProps) {
  return (
    <h2>
      <button type="button" className={styles.head} aria-expanded={open} onClick={onToggle}>
        {title}
        <svg viewBox="0 0 10 10" aria-hidden="true">
          <path d={open ? 'M1 3l4 4 4-4' : 'M3 1l4 4-4 4'} />
        </svg>
        <span>{children}</span>
      </button>
    </h2>
  );
}
