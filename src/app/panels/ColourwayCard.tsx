import { useEffect, useRef } from 'react';
import type { Picture } from '../../../workers/client.ts';
import type { Colourway } from '../../graph/recipe.ts';
import { useResults } from '../../store/hooks.ts';
import { edit } from '../../store/job-store.ts';
import { drawSmall } from '../files/small-picture.ts';
import styles from './Colourways.module.css';
import { renameColourway, showColourway } from './colourway-edits.ts';
import { NameField } from './NameField.tsx';
import { panelTexts } from './strings.ts';

const texts = panelTexts.colourways;
/** Longest side of a small proof, px of the screen. */
const LONGEST = 60;

interface CardProps {
  colourway: Colourway;
  inUse: boolean;
  renaming: boolean;
  onRename(): void;
  onEnd(): void;
}

/** One colourway: a press shows it, a double press or F2 renames it. */
export function ColourwayCard({ colourway, inUse, renaming, onRename, onEnd }: CardProps) {
  const { id, name } = colourway;
  const picture = useResults((state) => state.thumbnails.get(id));
  const show = () => edit(texts.steps.show(name), (job) => showColourway(job, id));
  return (
    <li className={styles.card}>
      <button
        type="button"
        className={styles.show}
        aria-pressed={inUse}
        aria-label={name}
        onClick={show}
        onDoubleClick={onRename}
        onKeyDown={(event) => event.key === 'F2' && onRename()}
      >
        <SmallProof picture={picture} />
        {!renaming && <span className={styles.name}>{name}</span>}
      </button>
      {renaming && (
        <NameField
          label={texts.name}
          name={name}
          onKeep={(text) => edit(texts.steps.rename, (job) => renameColourway(job, id, text))}
          onEnd={onEnd}
        />
      )}
    </li>
  );
}

function SmallProof({ picture }: { picture: Picture | undefined }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    if (picture) drawSmall(picture, LONGEST * devicePixelRatio, canvas.current!);
  }, [picture]);
  return (
    <span className={styles.proof} aria-hidden="true">
      <canvas ref={canvas} hidden={!picture} />
    </span>
  );
}
