import { Cancelled, type Client } from '../../../workers/client.ts';
import { deliveredInkSet, readInkSet } from '../../docket/ink-edits.ts';
import type { Ink, Measurement } from '../../graph/inks.ts';
import type { GraphNode, Job } from '../../graph/job.ts';
import type { Press, PressFigure } from '../../graph/press.ts';
import type { Page } from '../../ink/form/layout.ts';
import type { FormFindings } from '../../ink/form/read-form.ts';
import { keyOfInks } from '../../ink/measured.ts';
import { withNode } from '../../store/edits.ts';
import { edit, jobStore } from '../../store/job-store.ts';
import { download } from '../files/browser-files.ts';
import { say, sayBriefly, setFiles } from '../files/files-store.ts';
import { inkTexts } from './strings.ts';

const texts = inkTexts.test;
/** Resolution of the form's plates: that of masters and film (common practice, no source). */
const FORM_PPI = 600;

/** Makes the form of the open job and hands it over in one ZIP. */
export async function deliverForm(client: Client, page: Page): Promise<void> {
  const job = jobStore.getState().job!;
  const stop = new AbortController();
  setFiles({ busy: { text: texts.making, cancel: () => stop.abort() } });
  try {
    const { files } = await client.run('pressForm', { job, page, ppi: FORM_PPI }, { signal: stop.signal });
    const { files: packed } = await client.run('zip', { files }, { signal: stop.signal });
    download(texts.file, new Uint8Array(packed[0]!.bytes), 'application/zip');
    sayBriefly(texts.made(texts.file));
  } catch (error) {
    if (!(error instanceof Cancelled)) say((error as Error).message);
  } finally {
    setFiles({ busy: null });
  }
}

/** Readings of the same overprints read the same way give way to the new ones; all others stay. */
export function withReadings(before: readonly Measurement[], read: readonly Measurement[]): Measurement[] {
  const keyOf = ({ inks, how = 'instrument' }: Measurement) => `${how} ${keyOfInks(inks)}`;
  const fresh = new Set(read.map(keyOf));
  return [...before.filter((each) => !fresh.has(keyOf(each))), ...read];
}

/** The inks with their curves as they were read: a curve takes the place of every other word on how tints grow. */
export function withCurves(inks: readonly Ink[], curves: FormFindings['curves']): Ink[] {
  return inks.map((ink) => {
    const curve = curves[ink.id];
    if (!curve) return ink;
    const { gain: _, toneGainPercent: __, ...others } = ink;
    return { ...others, curvePercent: curve };
  });
}

/** Puts what a press test found into the job's Ink set, as one step. Hints count only once they are accepted. */
export function takeOver(findings: FormFindings): void {
  edit(texts.step, (job) => withFindings(job, findings));
}

/** The job with what a press test found. Curves from photos or by eye are hints, and left out. */
export function withFindings(job: Job, { measured, curves }: FormFindings): Job {
  const node = deliveredInkSet(job.graph);
  const set = readInkSet(node);
  if (!node || !set) return job;
  const sure = measured.every(({ how }) => how !== 'photo' && how !== 'eye');
  const next = {
    inks: sure ? withCurves(set.inks, curves) : set.inks,
    measured: withReadings(set.measured, measured),
  };
  const plain = JSON.parse(JSON.stringify(next)) as GraphNode['settings'];
  return withNode(job, node.id, (old) => ({ ...old, settings: { ...old.settings, ...plain } }));
}

/** Notes a figure of the press as one's own test; null takes it out. */
export function setFigure(figure: PressFigure, value: number | null): void {
  edit(texts.figureStep(texts.figures[figure]), (job) => {
    const press: Press = job.press ?? { name: texts.ownPress, process: 'own', figures: {} };
    const { [figure]: _, ...others } = press.figures;
    const figures = value === null ? others : { ...others, [figure]: { value, source: 'own-test' as const } };
    return { ...job, press: { ...press, figures } };
  });
}
