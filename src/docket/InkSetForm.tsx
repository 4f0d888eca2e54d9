import type { Ink } from '../graph/inks.ts';
import type { GraphNode } from '../graph/job.ts';
import { withNode } from '../store/edits.ts';
import { edit } from '../store/job-store.ts';
import { setView } from '../store/view-store.ts';
import { apply } from './apply.ts';
import styles from './Docket.module.css';
import { InkRow } from './InkRow.tsx';
import own from './InkSet.module.css';
import { addInk, changeInk, type InkSetSettings, MOST, readInkSet, removeInk } from './ink-edits.ts';
import { MeasuredList } from './MeasuredList.tsx';
import { PlateList } from './PlateList.tsx';
import { strings } from './strings.ts';
import { TakeUpList } from './TakeUpList.tsx';

const NEW_LAB: Ink['lab'] = [50, 0, 0];

/** Inks and plates of an Ink set; the rest of its settings has ordinary fields. */
export function InkSetForm({ node }: { node: GraphNode }) {
  const set = readInkSet(node);
  if (!set) return null;
  const both = (words: string, next: Pick<InkSetSettings, 'inks' | 'plates'>) =>
    edit(words, (job) =>
      withNode(job, node.id, (old) => ({
        ...old,
        settings: { ...old.settings, inks: next.inks.map((each) => plain(each)), plates: next.plates },
      })),
    );
  const change = (id: string) => (to: Partial<Ink>, words: string, gesture?: string) =>
    apply(
      { node: node.id, name: 'inks', title: strings.inks.step },
      changeInk(set.inks, id, to).map((each) => plain(each)),
      words,
      gesture,
    );
  const remove = (ink: Ink) => {
    const next = removeInk(set, ink.id);
    return next && (() => both(strings.inks.remove(ink.name), next));
  };
  return (
    <>
      <section className={styles.field} aria-label={strings.inks.heading}>
        <h4 className={styles.title}>{strings.inks.heading}</h4>
        <ul className={own.inks}>
          {set.inks.map((ink) => (
            <InkRow key={ink.id} ink={ink} change={change(ink.id)} remove={remove(ink)} />
          ))}
        </ul>
        <button
          type="button"
          className={styles.add}
          disabled={set.inks.length >= MOST || set.plates.length >= MOST}
          onClick={() => both(strings.inks.add, addInk(set, strings.inks.fresh, NEW_LAB!))}
        >
          {strings.inks.add}
        </button>
        <button
          type="button"
          className={own.shelf}
          onClick={() => setView({ sheet: 'inks', wiringOpen: false })}
        >
          {strings.inks.shelf}
        </button>
      </section>
      <section className={styles.field} aria-label={strings.plates.label}>
        <h4 className={styles.title}>{strings.plates.heading}</h4>
        <PlateList
          set={set}
          commit={(plates, words, gesture) =>
            apply({ node: node.id, name: 'plates', title: strings.plates.step }, plates, words, gesture)
          }
        />
        <p className={styles.help}>{strings.plates.onePass}</p>
      </section>
      <section className={styles.field} aria-label={strings.takeUps.heading}>
        <h4 className={styles.title}>{strings.takeUps.heading}</h4>
        <TakeUpList
          set={set}
          commit={(takeUps, words, gesture) =>
            apply({ node: node.id, name: 'takeUps', title: strings.takeUps.step }, takeUps, words, gesture)
          }
        />
        <p className={styles.help}>{strings.takeUps.help}</p>
      </section>
      <section className={styles.field} aria-label={strings.measured.heading}>
        <h4 className={styles.title}>{strings.measured.heading}</h4>
        <MeasuredList
          set={set}
          commit={(measured, words, gesture) =>
            apply(
              { node: node.id, name: 'measured', title: strings.measured.step },
              measured.map((each) => plain(each)),
              words,
              gesture,
            )
          }
        />
        <p className={styles.help}>{strings.measured.help}</p>
      </section>
    </>
  );
}

/** A thing as the document keeps it: plain JSON, nothing undefined. */
function plain<Thing extends object>(thing: Thing): GraphNode['settings'] {
  return Object.fromEntries(Object.entries(thing).filter(([, value]) => value !== undefined));
}
