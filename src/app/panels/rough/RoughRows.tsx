import { useMemo, useState } from 'react';
import type { Matches } from '../../../graph/matches.ts';
import { displayOf } from '../../../ink/display.ts';
import { withRecipe } from '../../../store/edits.ts';
import { useJob } from '../../../store/hooks.ts';
import { edit } from '../../../store/job-store.ts';
import { setView } from '../../../store/view-store.ts';
import { showPlace } from '../../../view/desk-store.ts';
import { platesOf, recipeText } from '../../../view/plates-of.ts';
import { Few } from '../regions/Few.tsx';
import styles from '../regions/Regions.module.css';
import { Torn } from '../Torn.tsx';
import own from './Rough.module.css';
import { roughTexts as texts } from './strings.ts';

type Match = Matches['regions'][number];

/** Regions that want one colour, and get one recipe for it. */
interface Alike {
  /** The largest of them. */
  match: Match;
  ids: readonly string[];
}

/** Regions by what they want, the farthest off first. */
function alikeOf({ regions }: Matches): Alike[] {
  const groups = new Map<string, Match[]>();
  for (const match of regions) {
    const key = match.wantedLab.join();
    const group = groups.get(key);
    if (group) group.push(match);
    else groups.set(key, [match]);
  }
  return [...groups.values()]
    .map((group) => ({
      match: group.reduce((most, each) => (each.areaMm2 > most.areaMm2 ? each : most)),
      ids: group.map(({ id }) => id),
    }))
    .sort((one, other) => other.match.distance - one.match.distance);
}

/** So much is shown round a region: this many times the side of a square as large. */
const TIMES = 4;
const LEAST_SPAN_MM = 14;

function show({ match: { anchorMm, areaMm2 }, ids }: Alike): void {
  showPlace({ x: anchorMm[0], y: anchorMm[1] }, Math.max(LEAST_SPAN_MM, TIMES * Math.sqrt(areaMm2)));
  setView({ chosen: ids });
}

/** The regions whose recipes are farthest from the rough, each with what it wants and what it gets. */
export function RoughRows({ matches }: { matches: Matches }) {
  const worst = useMemo(() => alikeOf(matches), [matches]);
  return (
    <>
      <h3>{texts.farthest}</h3>
      <Few items={worst}>{(alike) => <Row key={alike.match.id} alike={alike} />}</Few>
    </>
  );
}

function Row({ alike }: { alike: Alike }) {
  const { match, ids } = alike;
  const job = useJob((each) => each);
  const [open, setOpen] = useState(false);
  const plates = platesOf(job);
  const apart = texts.apart(match.distance);
  return (
    <li>
      <div className={styles.row}>
        <button
          type="button"
          className={own.pair}
          aria-label={texts.show(texts.regions(apart, ids.length))}
          onClick={() => show(alike)}
        >
          <Torn piece={11} colour={displayOf(match.wantedLab, 'srgb').css} />
          <Torn piece={12} colour={displayOf(match.lab, 'srgb').css} />
          <span>{texts.regions(apart, ids.length)}</span>
        </button>
        {match.outOfReach && <small className={styles.quiet}>{texts.far}</small>}
        <button
          type="button"
          className={styles.word}
          aria-expanded={open}
          aria-label={texts.othersOf(apart)}
          onClick={() => setOpen(!open)}
        >
          {texts.others}
        </button>
      </div>
      {open && (
        <ul className={own.others}>
          {match.alternatives?.map(({ recipe, lab, distance }, i) => {
            const name = recipeText(recipe, plates);
            return (
              <li key={name}>
                <button
                  type="button"
                  className={own.pair}
                  title={name}
                  aria-label={texts.take(name, texts.apart(distance))}
                  onClick={() => edit(texts.takeStep(name), (before) => withRecipe(before, ids, recipe))}
                >
                  <Torn piece={20 + i} colour={displayOf(lab, 'srgb').css} />
                  <span>{texts.apart(distance)}</span>
                </button>
              </li>
            );
          })}
        </ul>
      )}
    </li>
  );
}
