import type { Complaint } from '../../../graph/complaint.ts';
import type { FigureSource, Press, PressFigure, Process } from '../../../graph/press.ts';
import { isMeant, meantOf } from '../../../press/meant.ts';
import { FIGURE_TITLES, PROCESS_TITLES, pressOf } from '../../../press/profiles.ts';
import { edit } from '../../../store/job-store.ts';
import { pressTexts } from './strings.ts';

const { steps } = pressTexts;

/** Takes a press of this process, or none. Figures that were tested or told stay. */
export function choosePress(process: Process | null): void {
  if (process === null) {
    edit(steps.noPress, (job) => ({ ...job, press: null }));
    return;
  }
  edit(steps.press(PROCESS_TITLES[process]), (job) => {
    const known = Object.entries(job.press?.figures ?? {}).filter(
      ([, figure]) => figure?.source === 'own-test' || figure?.source === 'printer',
    );
    const press = pressOf(process);
    return { ...job, press: { ...press, figures: { ...press.figures, ...Object.fromEntries(known) } } };
  });
}

/** Changes a figure of the job's press; null takes it out. */
export function setPressFigure(
  figure: PressFigure,
  value: number | null,
  source: FigureSource,
  gesture?: string,
): void {
  const change = (press: Press): Press => {
    const { [figure]: _, ...others } = press.figures;
    return { ...press, figures: value === null ? others : { ...others, [figure]: { value, source } } };
  };
  edit(
    steps.figure(FIGURE_TITLES[figure]),
    (job) => (job.press ? { ...job, press: change(job.press) } : job),
    gesture,
  );
}

/** Marks a fault as meant. */
export function markMeant(fault: Complaint): void {
  edit(steps.mark, (job) => ({ ...job, meant: [...job.meant, meantOf(fault)] }));
}

/** Takes every mark back that makes a fault count as meant. */
export function unmarkMeant(fault: Complaint): void {
  edit(steps.unmark, (job) => ({ ...job, meant: job.meant.filter((known) => !isMeant(fault, [known])) }));
}
