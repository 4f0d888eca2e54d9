import { BadInput } from '../../src/graph/complaint.ts';
import type { Job } from '../../src/graph/job.ts';
import type { Tools } from '../engine/evaluation.ts';
import type { ProofValue } from '../engine/values.ts';
import type { PicturePage } from '../files/pdf/pictures-pdf.ts';
import { mmToPx, pxToMm, type SharedBytes } from '../kernels/plane.ts';
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
  /** Whether all sheets are shown small on one PNG. */
  contact: boolean;
  /** All sheets in one PDF, at about this many pixels per inch; null for none. */
  pdfPpi: number | null;
}

/** A longer run is shown by this many of its sheets, evenly spaced, first and last among them. */
const MOST_SHOWN = 48;
/** Longest side of a sheet on the contact sheet, px. */
const CELL = 420;
/** A PDF of more pixels than these is larger than most programs open. */
const MOST_PDF_PIXELS = 400e6;

/**
 * A run of sheets as the press prints them one after another: all of them small on one PNG, some at full size, all of
 * them in one PDF.
 *
 * @throws BadInput when the job has no Proof node, a sheet lies outside the run, or the PDF would be too large
 */
export async function edition(input: EditionInput, context: TaskContext): Promise<{ files: MadeFile[] }> {
  const { job, sheets, full, seed, contact, pdfPpi } = input;
  const proof = firstOf(job, 'proof');
  if (!proof) throw new BadInput('the job has no Proof node, so no sheet can be shown; add one');
  const outside = full.find((sheet) => sheet < 1 || sheet > sheets);
  if (outside !== undefined)
    throw new BadInput(`there is no sheet ${outside}: the edition runs from 1 to ${sheets}`);
  const { tools, tidy } = context.engine.toolBox(context.flag);
  const jobAt = (sheet: number) => sheetOfRun(job, { sheet, of: sheets, seed });
  const print = <Made>(
    sheet: number,
    scale: number,
    make: (printed: Printed, tools: Tools) => Promise<Made>,
  ) => {
    const title = input.numbered ? `${sheet}/${sheets}` : null;
    return withSheet({ job: jobAt(sheet), node: proof, scale, title }, make, context, tools);
  };
  try {
    const files: MadeFile[] = [];
    if (contact)
      files.push({ name: 'contact-sheet.png', bytes: await contactOf(sheets, jobAt, context, tools) });
    for (const sheet of full)
      files.push({ name: fileOf(sheet, sheets), bytes: await print(sheet, 1, pngOf) });
    if (pdfPpi !== null) {
      const pages: PicturePage[] = [];
      const scale = await pdfScale(jobAt(1), proof, sheets, pdfPpi, context);
      for (let sheet = 1; sheet <= sheets; sheet++) pages.push(await print(sheet, scale, pageOf));
      files.push({
        name: 'edition.pdf',
        bytes: await tools.whole('picturesPdf', { pages, title: job.name }),
      });
    }
    return { files };
  } finally {
    tidy();
  }
}

async function contactOf(
  sheets: number,
  jobAt: (sheet: number) => Job,
  context: TaskContext,
  tools: Tools,
): Promise<Uint8Array> {
  const cells: SheetCell[] = [];
  for (const sheet of shownOf(sheets))
    cells.push(await cellOf(jobAt(sheet), `${sheet}/${sheets}`, context, tools, CELL));
  return sheetPng(cells, tools);
}

/** The whole scale that comes nearest to a wanted ppi. @throws BadInput when that makes too many pixels */
async function pdfScale(
  job: Job,
  node: string,
  sheets: number,
  pdfPpi: number,
  { engine, flag, onProgress }: TaskContext,
): Promise<number> {
  const run = await engine.evaluate(
    { job, targets: [{ node, port: 'proof' }], scale: MEASURED_AT },
    flag,
    onProgress,
  );
  const { ppi, mm } = run.values[0] as ProofValue;
  run.release();
  const fullPpi = ppi * MEASURED_AT;
  const scale = Math.max(1, Math.round(fullPpi / pdfPpi));
  const pixels = (sheets * mmToPx(mm[0], fullPpi) * mmToPx(mm[1], fullPpi)) / (scale * scale);
  if (pixels <= MOST_PDF_PIXELS) return scale;
  const fits = Math.floor(Math.sqrt(MOST_PDF_PIXELS / pixels) * (fullPpi / scale));
  throw new BadInput(
    `a PDF of ${sheets} sheets at ${Math.round(fullPpi / scale)} ppi would be too large; take ${fits} ppi or less, or fewer sheets`,
  );
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

/** A proof is measured small: its size in mm is the same. */
const MEASURED_AT = 16;

interface Wanted {
  job: Job;
  node: string;
  scale: number;
  /** What stands in the margin below; null for no margin. */
  title: string | null;
}

/** A printed sheet, with its margin where it has one. */
interface Printed {
  width: number;
  height: number;
  data: SharedBytes;
  ppi: number;
  mm: readonly [number, number];
}

const pngOf = ({ width, height, data, ppi }: Printed, tools: Tools) =>
  tools.whole('encodePng', { width, height, bands: 3, data, ppi, srgb: true });

async function pageOf({ width, height, data, mm }: Printed, tools: Tools): Promise<PicturePage> {
  const pixels = await tools.whole('deflated', { data, rowBytes: width * 3, components: 3 });
  return { width, height, pixels, mm };
}

/** Prints one sheet and has something made of it. */
async function withSheet<Made>(
  { job, node, scale, title }: Wanted,
  make: (printed: Printed, tools: Tools) => Promise<Made>,
  { engine, flag, onProgress }: TaskContext,
  tools: Tools,
): Promise<Made> {
  const run = await engine.evaluate({ job, targets: [{ node, port: 'proof' }], scale }, flag, onProgress);
  try {
    const { width, height, pixels, ppi, mm } = run.values[0] as ProofValue;
    if (title === null) return await make({ width, height, data: pixels, ppi, mm }, tools);
    const margin = Math.round(mmToPx(MARGIN_MM, ppi));
    const letters = mmToPx(NUMBER_MM, ppi);
    const sheet = { width, height: height + margin, places: [] };
    const data = tools.bytes(width * sheet.height * 3);
    fillPaper(sheet, data);
    data.set(pixels);
    writeTitle(title, margin, height + (margin - letters) / 2, letters, sheet, data);
    const high = mm[1] + pxToMm(margin, ppi);
    const made = await make({ width, height: sheet.height, data, ppi, mm: [mm[0], high] }, tools);
    tools.free(data);
    return made;
  } finally {
    run.release();
  }
}
