import type { Complaint } from '../../../graph/complaint.ts';
import type { RegionEdit } from '../../../graph/region-edits.ts';
import { useJob } from '../../../store/hooks.ts';
import { handEdits } from '../../../store/region-edits.ts';
import { deskStore, showPlace } from '../../../view/desk-store.ts';
import { complaintsByEdit, editPath, placeOf } from '../../../view/region-tools/edit-places.ts';
import { takeEditBack } from '../../../view/region-tools/make-edit.ts';
import { editKey } from '../../../view/region-tools/marks.ts';
import { Few } from './Few.tsx';
import { pointAt } from './point-at.ts';
import styles from './Regions.module.css';
import { regionPanelTexts } from './strings.ts';

const texts = regionPanelTexts.edits;

/** So much is shown round an edit: this many times its length, and not less, mm. */
const TIMES = 2.5;
const LEAST_SPAN_MM = 14;

function show(edit: RegionEdit): void {
  const path = editPath(edit);
  const span = (along: number[]) => Math.max(...along) - Math.min(...along);
  const length = Math.max(span(path.map(({ x }) => x)), span(path.map(({ y }) => y)));
  showPlace(placeOf(edit), Math.max(LEAST_SPAN_MM, TIMES * length));
  deskStore.setState({ mark: editKey(edit.id) });
}

/** What was done to the regions by hand: the newest first, each with its place and what is wrong with it. */
export function HandEdits({ complaints }: { complaints: readonly Complaint[] }) {
  const edits = useJob(handEdits);
  const faults = complaintsByEdit(edits, complaints);
  return (
    <>
      <h3>{texts.title}</h3>
      {edits.length === 0 && <p className={styles.quiet}>{texts.none}</p>}
      <Few items={edits.toReversed()}>
        {(edit) => {
          const name = texts.names[edit.does];
          const place = regionPanelTexts.at(placeOf(edit));
          const fault = faults.get(edit.id);
          return (
            <li key={edit.id} {...pointAt(editKey(edit.id))}>
              <span className={styles.row}>
                <button type="button" className={styles.name} title={texts.goTo} onClick={() => show(edit)}>
                  {name}
                  <small>{place}</small>
                </button>
                <button
                  type="button"
                  className={styles.word}
                  aria-label={texts.removeHelp(name, place)}
                  title={texts.removeHelp(name, place)}
                  onClick={() => takeEditBack(edit.id)}
                >
                  {texts.remove}
                </button>
              </span>
              {fault && <p className={styles.fault}>{fault.message}</p>}
            </li>
          );
        }}
      </Few>
    </>
  );
}
