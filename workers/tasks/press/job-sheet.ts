import type { Complaint } from '../../../src/graph/complaint.ts';
import type { Ink, Stock } from '../../../src/graph/inks.ts';
import type { Job } from '../../../src/graph/job.ts';
import type { Report } from '../../../src/graph/report.ts';
import type { JobSheet, JobSheetPlate } from '../../../src/press/job-sheet.ts';
import { PLATE_WORDS } from '../../../src/press/profiles.ts';
import type { PlateScreen } from '../../../src/press/screens.ts';
import type { SheetSettings } from '../../../src/press/sheet.ts';
import type { Tools } from '../../engine/evaluation.ts';
import type { PlatesValue } from '../../engine/values.ts';
import type { Plane } from '../../kernels/plane.ts';
import { pxToMm } from '../../kernels/plane.ts';
import type { MadeFile } from '../task.ts';
import type { LaidOut } from './laid-out.ts';

const THUMBNAIL_PX = 320;

export interface JobSheetOrder {
  job: Job;
  plates: PlatesValue;
  /** Cut to their trim. */
  trimmed: readonly Plane[];
  laid: LaidOut;
  rows: Report['plates'];
  stock: Stock;
  faults: readonly Complaint[];
  madeAt: string;
}

/** The sheet that goes with the job to the press, as PDF. */
export async function jobSheet(order: JobSheetOrder, tools: Tools): Promise<MadeFile> {
  const { job, plates, trimmed, laid, rows, stock, faults, madeAt } = order;
  const { settings, sheet } = laid;
  const process = job.press?.process ?? 'own';
  const mm = (px: number) => pxToMm(px, sheet.ppi);
  const told: JobSheet = {
    title: job.name,
    colourway: job.colourways.find(({ id }) => id === job.colourway)?.name ?? '',
    madeAt,
    press: job.press?.name ?? null,
    plateWord: PLATE_WORDS[process],
    trimMm: [mm(sheet.trim[2] - sheet.trim[0]), mm(sheet.trim[3] - sheet.trim[1])],
    sheetMm: sheet.plan.mm,
    bleedMm: settings.bleedMm,
    feedEdge: settings.feedEdge,
    side: settings.side,
    marks: marksOf(settings),
    film: filmOf(settings),
    stock: `${stock.surface}, Lab ${stock.lab.join(' ')}`,
    plates: await Promise.all(
      plates.plates.map(
        async ({ order: at, id, ink, pass, screen }, i): Promise<JobSheetPlate> => ({
          order: at,
          id,
          ink: ink.name,
          pass,
          coveragePercent: rows[i]!.coveragePercent,
          tone: [screen ? screenOf(screen) : 'no halftone', toneOf(ink, screen)].join('; '),
          thumbnail: await thumbnailOf(trimmed[i]!, tools),
        }),
      ),
    ),
    faults: faults.filter(({ severity }) => severity !== 'note'),
  };
  return { name: 'job-sheet.pdf', bytes: await tools.whole('jobSheetPdf', told) };
}

function marksOf({ cropMarks, registerMarks, plateNames, colourBar, tintWedge }: SheetSettings): string[] {
  const marks: [boolean, string][] = [
    [cropMarks, 'crop'],
    [registerMarks, 'register'],
    [plateNames, 'names'],
    [colourBar, 'colour bar'],
    [tintWedge, 'tint wedge'],
  ];
  return marks.filter(([there]) => there).map(([, name]) => name);
}

function filmOf({ emulsion, mirrored, negative }: SheetSettings): string | null {
  const words = [
    ...(emulsion === 'down' ? ['emulsion down'] : []),
    ...(mirrored ? ['mirrored'] : []),
    ...(negative ? ['negative'] : []),
  ];
  return words.length === 0 ? null : words.join(', ');
}

function screenOf({ how, kind, lpi, angleDeg, dot, dotMm }: PlateScreen): string {
  const dots = kind === 'am' ? `${dot} dots, ${lpi} lpi at ${angleDeg} degrees` : `dots of ${dotMm} mm`;
  return how === 'screened' ? dots : `planned: ${dots}`;
}

/** Whether the growth of tints was taken back on the plate, or is only foreseen in the proof. */
function toneOf({ curvePercent, toneGainPercent, gain }: Ink, screen: PlateScreen | undefined): string {
  if (screen?.toneApplied) return 'tone curve taken off the tints on the plate';
  if (curvePercent) return 'tone curve of the press is known; not applied to the plate';
  if (toneGainPercent !== undefined)
    return `tints grow by ${toneGainPercent} % at 50 %; not taken back on the plate`;
  if (gain !== undefined) return `dot gain ${gain}; not taken back on the plate`;
  return 'no tone curve known';
}

async function thumbnailOf(from: Plane, tools: Tools): Promise<Uint8Array> {
  const scale = Math.max(1, Math.ceil(Math.max(from.width, from.height) / THUMBNAIL_PX));
  const [width, height] = [Math.ceil(from.width / scale), Math.ceil(from.height / scale)];
  const small = tools.plane(width, height);
  await tools.bands('reduceCoverage', { from, to: small, scale }, height);
  const data = small.data.map((value) => 255 - value);
  tools.free(small.data);
  return tools.whole('encodePng', { width, height, bands: 1, data, ppi: 72 });
}
