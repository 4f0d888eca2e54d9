import { useState } from 'react';
import type { Complaint } from '../../../graph/complaint.ts';
import { PROCESSES, type Process } from '../../../graph/press.ts';
import { isMeant } from '../../../press/meant.ts';
import { PROCESS_TITLES } from '../../../press/profiles.ts';
import { useJob } from '../../../store/hooks.ts';
import { FoldHead } from '../FoldHead.tsx';
import { Few } from '../regions/Few.tsx';
import styles from '../regions/Regions.module.css';
import { FaultRow } from './FaultRow.tsx';
import { FigureRows } from './FigureRows.tsx';
import own from './Press.module.css';
import { choosePress } from './press-edits.ts';
import { pressTexts as texts } from './strings.ts';
import { useCheck } from './use-check.ts';

/** What the press would make trouble with: chosen press, faults with places, and what of them is meant. */
export function PressCheck() {
  const press = useJob((job) => job.press);
  const meant = useJob((job) => job.meant);
  const [open, setOpen] = useState(false);
  const { checked, running, trouble, start, cancel } = useCheck();
  const faults = checked?.faults ?? [];
  const waiting = faults.filter((fault) => !isMeant(fault, meant));
  return (
    <div className={styles.panel}>
      <FoldHead title={texts.title} open={open} onToggle={() => setOpen(!open)}>
        {texts.open(waiting.length)}
      </FoldHead>
      {open && (
        <>
          <label className={own.choose}>
            <span aria-hidden="true">{texts.press}</span>
            <select
              aria-label={texts.press}
              value={press?.process ?? ''}
              onChange={({ target }) => choosePress(target.value === '' ? null : (target.value as Process))}
            >
              <option value="">{texts.none}</option>
              {PROCESSES.map((process) => (
                <option key={process} value={process}>
                  {PROCESS_TITLES[process]}
                </option>
              ))}
            </select>
          </label>
          {!press && <p className={styles.quiet}>{texts.noneHelp}</p>}
          <button type="button" className={own.go} onClick={running ? cancel : start}>
            {running ? texts.cancel : checked ? texts.again : texts.go}
          </button>
          <p role="status" className={trouble ? styles.fault : styles.quiet}>
            {running ? texts.running : (trouble ?? (checked?.stale && texts.stale))}
          </p>
          {checked && faults.length === 0 && <p className={styles.told}>{texts.clean}</p>}
          <Faults title={texts.errors} faults={waiting.filter(({ severity }) => severity === 'error')} />
          <Faults title={texts.warnings} faults={waiting.filter(({ severity }) => severity === 'warning')} />
          <Faults title={texts.meant} faults={faults.filter((fault) => isMeant(fault, meant))} meant />
          {press && (
            <details>
              <summary className={styles.word}>{texts.figures}</summary>
              <p className={styles.quiet}>{texts.figuresHelp}</p>
              <FigureRows press={press} />
            </details>
          )}
        </>
      )}
    </div>
  );
}

interface FaultsProps {
  title: string;
  faults: readonly Complaint[];
  meant?: boolean;
}

function Faults({ title, faults, meant = false }: FaultsProps) {
  if (faults.length === 0) return null;
  return (
    <section aria-label={title} className={own.faults}>
      <h3>{title}</h3>
      <Few items={faults}>
        {(fault) => <FaultRow key={`${fault.code} ${fault.message}`} fault={fault} meant={meant} />}
      </Few>
    </section>
  );
}
