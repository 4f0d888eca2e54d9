import { acceptCase, reassign } from '../../../graph/carry-over.ts';
import type { Case, Redraw } from '../../../graph/redraw.ts';
import { useJob } from '../../../store/hooks.ts';
import { edit, jobStore } from '../../../store/job-store.ts';
import { setView } from '../../../store/view-store.ts';
import { showPlace } from '../../../view/desk-store.ts';
import styles from '../regions/Regions.module.css';
import own from './Redraw.module.css';
import { redrawTexts as texts } from './strings.ts';

/** So much is shown round a region: this many times the side of a square as large. */
const TIMES = 4;
const LEAST_SPAN_MM = 14;

interface CaseRowProps {
  told: Case & { at: number };
  redraw: Redraw;
}

function nameOf({ new: fresh, old }: Case): string {
  if (!fresh) return texts.was(old!);
  return old && old !== fresh ? texts.from(fresh, old) : texts.region(fresh);
}

/** Shows a region, or where one was. */
function show({ new: fresh, old }: Case, { gone }: Redraw): void {
  const entries = [...(jobStore.getState().job?.register.regions ?? []), ...gone];
  const entry = entries.find(({ id }) => id === (fresh ?? old));
  if (!entry) return;
  const [x, y] = entry.anchorMm;
  showPlace({ x, y }, Math.max(LEAST_SPAN_MM, TIMES * Math.sqrt(entry.areaMm2)));
  setView({ chosen: fresh ? [fresh] : [] });
}

/** One region of a redraw: shown, taken as it is, or given the recipe of another old region. */
export function CaseRow({ told, redraw }: CaseRowProps) {
  const olds = useJob((job) => job.redraw?.gone ?? []);
  const name = nameOf(told);
  return (
    <li className={own.case}>
      <button type="button" className={styles.name} onClick={() => show(told, redraw)}>
        {name}
        {told.new && told.old && <small>{texts.sure(told.confidence)}</small>}
      </button>
      <button
        type="button"
        className={styles.word}
        aria-label={texts.acceptOf(name)}
        onClick={() => edit(texts.steps.accept, (job) => acceptCase(job, told.at))}
      >
        {texts.accept}
      </button>
      {told.new && olds.length > 0 && (
        <select
          aria-label={texts.give(told.new)}
          value=""
          onChange={({ target }) =>
            edit(texts.steps.give, (job) => acceptCase(reassign(job, told.new!, target.value), told.at))
          }
        >
          <option value="">{texts.giveShort}</option>
          {olds.map(({ id }) => (
            <option key={id} value={id}>
              {texts.was(id)}
            </option>
          ))}
        </select>
      )}
    </li>
  );
}
