import type { Recipe } from '../../graph/recipe.ts';
import { fadesOf, withFadeChanged } from '../../store/fades.ts';
import { useJob, useView } from '../../store/hooks.ts';
import { edit } from '../../store/job-store.ts';
import { platesOf, recipeText } from '../plates-of.ts';
import styles from './SurfaceRow.module.css';
import { surfaceTexts } from './strings.ts';
import { useSurface } from './surface-store.ts';

const texts = surfaceTexts.fades;

/** Between what the chosen fade runs, and ways to change that; without one, between what a new one will. */
export function FadeControls() {
  const job = useJob((state) => state);
  const chosen = useSurface((state) => state.chosen);
  const inHand = useView((state) => state.inHand);
  const fade = chosen === null ? undefined : fadesOf(job)[chosen];
  const words = (recipe: Recipe) => recipeText(recipe, platesOf(job));
  const from = fade ? words(fade.from) : texts.own;
  const to = fade ? words(fade.to) : inHand ? words(inHand) : texts.paper;
  const setEnd = (end: 'from' | 'to') => {
    if (chosen !== null && inHand)
      edit(texts.steps.end, (before) =>
        withFadeChanged(before, chosen, (now) => ({ ...now, [end]: inHand })),
      );
  };
  const swap = () => {
    if (chosen !== null)
      edit(texts.steps.swap, (before) =>
        withFadeChanged(before, chosen, (now) => ({ ...now, from: now.to, to: now.from })),
      );
  };
  return (
    <>
      <span className={styles.note}>
        {texts.from} <b>{from}</b> {texts.to.toLowerCase()} <b>{to}</b>
      </span>
      {fade && (
        <>
          <button type="button" className={styles.action} onClick={swap}>
            {texts.swap}
          </button>
          <button type="button" className={styles.action} disabled={!inHand} onClick={() => setEnd('from')}>
            {texts.fromHand}
          </button>
          <button type="button" className={styles.action} disabled={!inHand} onClick={() => setEnd('to')}>
            {texts.toHand}
          </button>
        </>
      )}
    </>
  );
}
