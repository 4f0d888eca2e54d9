import { BadInput } from '../../src/graph/complaint.ts';
import type { Job } from '../../src/graph/job.ts';
import type { Tools } from '../engine/evaluation.ts';
import type { ProofValue } from '../engine/values.ts';
import { layCells, type SheetCell, sheetOf } from './contact-cells.ts';
import { firstOf } from './job-ends.ts';
import type { MadeFile, TaskContext } from './task.ts';

export interface ContactSheetInput {
  job: Job;
}

/** Longest side of a print on the sheet, px. */
const CELL = 900;

/**
 * All colourways of a job, small, with their names, on one PNG.
 *
 * @throws BadInput when the job has no Proof node
 */
export async function contactSheet(
  { job }: ContactSheetInput,
  context: TaskContext,
): Promise<{ files: MadeFile[] }> {
  const { tools, tidy } = context.engine.toolBox(context.flag);
  try {
    const cells: SheetCell[] = [];
    for (const { id, name } of job.colourways)
      cells.push(await cellOf({ ...job, colourway: id }, name, context, tools));
    return { files: [{ name: 'contact-sheet.png', bytes: await sheetPng(cells, tools) }] };
  } finally {
    tidy();
  }
}

/** A small proof of a job under a title, at most `longest` px each way. @throws BadInput when the job has no Proof node */
export async function cellOf(
  job: Job,
  title: string,
  { engine, flag, onProgress }: TaskContext,
  tools: Tools,
  longest: number = CELL,
): Promise<SheetCell> {
  const node = firstOf(job, 'proof');
  if (!node) throw new BadInput('the job has no Proof node to show; add one');
  const targets = [{ node, port: 'proof' }];
  const scale = await scaleOf(job, longest, { engine, flag, onProgress });
  const run = await engine.evaluate({ job, targets, scale }, flag, onProgress);
  try {
    const { width, height, pixels } = run.values[0] as ProofValue;
    const copy = tools.bytes(pixels.length);
    copy.set(pixels);
    return { title, width, height, pixels: copy };
  } finally {
    run.release();
  }
}

/** The smallest whole scale at which a print fits its cell. */
async function scaleOf(
  job: Job,
  longest: number,
  { engine, flag, onProgress }: TaskContext,
): Promise<number> {
  const node = firstOf(job, 'line-drawing');
  if (!node) return 1;
  const run = await engine.evaluate(
    { job, targets: [{ node, port: 'drawing' }], scale: 1 },
    flag,
    onProgress,
  );
  const value = run.values[0]!;
  run.release();
  if (value.type !== 'drawing') return 1;
  return Math.max(1, Math.ceil(Math.max(value.line.width, value.line.height) / longest));
}

/** Cells laid out on one sheet, as PNG. */
export async function sheetPng(cells: readonly SheetCell[], tools: Tools): Promise<Uint8Array> {
  const sheet = sheetOf(cells, CELL);
  const data = tools.bytes(sheet.width * sheet.height * 3);
  layCells(cells, sheet, data);
  const { width, height } = sheet;
  return tools.whole('encodePng', { width, height, bands: 3, data, ppi: 150, srgb: true });
}
