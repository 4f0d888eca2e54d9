import { useMemo } from 'react';
import type { Recipe } from '../graph/recipe.ts';
import { recipeOf } from '../store/edits.ts';
import { fadesOf } from '../store/fades.ts';
import { useJobState, useResults, useView } from '../store/hooks.ts';
import { type NamedPlate, platesOf } from './plates-of.ts';
import styles from './Readout.module.css';
import { useHint } from './region-tools/use-hint.ts';
import { strings } from './strings.ts';

/** The tints of a recipe, each with how full its ink stands. */
function Tints({ recipe, plates }: { recipe: Recipe; plates: readonly NamedPlate[] }) {
  const tints = plates.filter(({ id }) => (recipe[id] ?? 0) > 0);
  if (tints.length === 0) return <span>{strings.paper}</span>;
  return tints.map(({ id, ink, colour }) => (
    <span key={id} className={styles.tint}>
      <span className={styles.well} aria-hidden="true">
        <span style={{ height: `${recipe[id]}%`, background: colour }} />
      </span>
      {ink} <span className={styles.value}>{strings.tintValue(recipe[id]!)}</span>
    </span>
  ));
}

/** What the region under the pointer prints and how large it is; without one, what is in hand. */
export function Readout() {
  const job = useJobState((state) => state.job);
  const region = useView((state) => state.hovered);
  const inHand = useView((state) => state.inHand);
  const map = useResults((state) => state.regions);
  const hint = useHint();
  const mapped = useMemo(() => map?.regions.find(({ id }) => id === region), [map, region]);
  if (!job) return null;
  const plates = platesOf(job);
  if (hint) return <p className={`${styles.readout} ${styles.sentence}`}>{hint}</p>;
  const fade = mapped && fadesOf(job)[mapped.id];
  if (mapped)
    return (
      <p className={styles.readout}>
        <Tints recipe={fade?.from ?? recipeOf(job, mapped.id)} plates={plates} />
        {fade && (
          <>
            {strings.fadesTo} <Tints recipe={fade.to} plates={plates} />
          </>
        )}
        <span className={styles.area}>{strings.area(mapped.areaMm2)}</span>
      </p>
    );
  return (
    <p className={`${styles.readout} ${styles.idle}`}>
      {inHand ? (
        <>
          {strings.idle.inHand} <Tints recipe={inHand} plates={plates} />
        </>
      ) : (
        strings.idle.handEmpty
      )}
    </p>
  );
}
