import { BadInput } from '../../src/graph/complaint.ts';
import type { Job } from '../../src/graph/job.ts';
import type { Tools } from '../engine/evaluation.ts';
import type { ProofValue } from '../engine/values.ts';
import { mmToPx } from '../kernels/plane.ts';
import { fillPaper, type SheetCell, writeTitle } from './contact-cells.ts';
import { cellOf, sheetPng } from './contact-sheet.ts';
import { sheetOfRun } from './edition-sheet.ts';
import { firstOf } from './job-ends.ts';
import type { MadeFile, TaskContext } from './task.ts';

export interface EditionInput {
  job: Job;
  /** Sheets in the run. */
  sheets: number;
  /** Sheets to give at full size, from 1. */
  full: readonly number[];
  /** Full sheets get a margin below with their number. */
  numbered: boolean;
  /** Another seed, another run. */
  seed: number;
}

/** A longer run is shown by this many of its sheets, evenly spaced, first and last among them. */
const MOST_SHOWN = 48;
/** Longest side of a sheet on the contact sheet, px. */
const CELL = 420;

/**
 * A run of sheets as the press prints them one after another: all of them small on one PNG, some at full size.
 *
 * @throws BadInput when the job has no Proof node or a sheet lies outside the run
 */
export async function edition(
  { job, sheets, full, numbered, seed }: EditionInput,
  context: TaskContext,
): Promise<{ files: MadeFile[] }> {
  const proof = firstOf(job, 'proof');
  if (!proof) throw new BadInput('the job has no Proof node, so no sheet can be shown; add one');
  const outside = full.find((sheet) => sheet < 1 || sheet > sheets);
  if (outside !== undefined)
    throw new BadInput(`there is no sheet ${outside}: the edition runs from 1 to ${sheets}`);
  const { tools, tidy } = context.engine.toolBox(context.flag);
  const jobAt = (sheet: number) => sheetOfRun(job, { sheet, of: sheets, seed });
  try {
    const cells: SheetCell[] = [];
    for (const sheet of shownOf(sheets))
      cells.push(await cellOf(jobAt(sheet), `${sheet}/${sheets}`, context, tools, CELL));
    const files: MadeFile[] = [{ name: 'contact-sheet.png', bytes: await sheetPng(cells, tools) }];
    for (const sheet of full) {
      const title = numbered ? `${sheet}/${sheets}` : null;
      files.push({
        name: fileOf(sheet, sheets),
        bytes: await fullSheet(jobAt(sheet), proof, title, context, tools),
      });
    }
    return { files };
  } finally {
    tidy();
  }
}

/** `sheet-007.png`, as many digits as the last one has. */
function fileOf(sheet: number, of: number): string {
  return `sheet-${String(sheet).padStart(String(of).length, '0')}.png`;
}

/** The sheets that the contact sheet shows. */
export function shownOf(sheets: number): number[] {
  const count = Math.min(sheets, MOST_SHOWN);
  if (count === 1) return [1];
  return Array.from({ length: count }, (_, k) => 1 + Math.round((k * (sheets - 1)) / (count - 1)));
}

/** Margin below a numbered sheet and the height of its number, mm. */
const MARGIN_MM = 10;
const NUMBER_MM = 3;

async function fullSheet(
  job: Job,
  node: string,
  title: string | null,
  { engine, flag, onProgress }: TaskContext,
  tools: Tools,
): Promise<Uint8Array> {
  const run = await engine.evaluate({ job, targets: [{ node, port: 'proof' }], scale: 1 }, flag, onProgress);
  try {
    const { width, height, pixels, ppi } = run.values[0] as ProofValue;
    if (title === null)
      return await tools.whole('encodePng', { width, height, bands: 3, data: pixels, ppi, srgb: true });
    const margin = Math.round(mmToPx(MARGIN_MM, ppi));
    const letters = mmToPx(NUMBER_MM, ppi);
    const sheet = { width, height: height + margin, places: [] };
    const data = tools.bytes(width * sheet.height * 3);
    fillPaper(sheet, data);
    data.set(pixels);
    writeTitle(title, margin, height + (margin - letters) / 2, letters, sheet, data);
    const png = { width, height: sheet.height, bands: 3, data, ppi, srgb: true } as const;
    const bytes = await tools.whole('encodePng', png);
    tools.free(data);
    return bytes;
  } finally {
    run.release();
  }
}
