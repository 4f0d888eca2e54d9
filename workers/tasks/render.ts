import { BadInput, type Complaint } from '../../src/graph/complaint.ts';
import type { End, Job } from '../../src/graph/job.ts';
import type { Report } from '../../src/graph/report.ts';
import { lintGraph } from '../../src/graph/wiring.ts';
import { nodeKinds } from '../../src/nodes/registry.ts';
import { marked } from '../../src/press/meant.ts';
import type { Tools } from '../engine/evaluation.ts';
import type { PlatesValue, PlateValue, Value } from '../engine/values.ts';
import type { Plane } from '../kernels/plane.ts';
import { feeding, firstOf, upstreamKind } from './job-ends.ts';
import { jobSheet } from './press/job-sheet.ts';
import { inBox, layOut } from './press/laid-out.ts';
import { PRESS_FORMATS, type PressFormat, pressFiles, stockOf } from './press/press-files.ts';
import { drawingOf, mm3, reportRegions } from './report-parts.ts';
import type { MadeFile, TaskContext } from './task.ts';

export const RENDER_FORMATS = [
  'png',
  ...PRESS_FORMATS,
  'job-sheet',
  'proof',
  'proof-jpeg',
  'proof-pdf',
] as const;
export type RenderFormat = (typeof RENDER_FORMATS)[number];

export interface RenderInput {
  job: Job;
  /** None: only the report. */
  formats: readonly RenderFormat[];
  /** 1 for full, n for a preview of 1/n. */
  scale: number;
  /** Moment that press PDFs bear, ISO 8601 in UTC; the start of 1980, as in ZIPs, where left out. */
  madeAt?: string;
}

const NO_DATE = '1980-01-01T00:00:00Z';

export interface Rendered {
  files: MadeFile[];
  report: Omit<Report, 'peakBytes'>;
}

/**
 * Plates as they enter the Press file, the proof, and the report on both.
 *
 * @throws BadInput when the graph delivers nothing
 */
export async function render(input: RenderInput, context: TaskContext): Promise<Rendered> {
  const { job, formats, scale } = input;
  const { engine, flag, onProgress } = context;
  const targets = targetsOf(job, formats);
  const wanted = Object.entries(targets).filter((entry): entry is [string, End] => entry[1] !== null);
  const run = await engine.evaluate({ job, targets: wanted.map(([, end]) => end), scale }, flag, onProgress);
  const { tools, complaints, tidy } = engine.toolBox(flag);
  try {
    const value = (name: string): Value | undefined =>
      run.values[wanted.findIndex(([other]) => other === name)];
    const plates = value('plates') as PlatesValue;
    const drawing = value('drawing');
    const madeAt = input.madeAt ?? NO_DATE;
    const sheet = value('sheet');
    const laid = layOut(
      plates,
      drawing?.type === 'drawing' ? drawing.artAt : 'trim',
      sheet?.type === 'sheet' ? sheet.settings : undefined,
      job.name,
    );
    const trimmed = await Promise.all(
      plates.plates.map((plate) => inBox(plate, laid, laid.sheet.trim, tools)),
    );
    const pictures = await picturesOf(input, plates, trimmed, value('proof'), tools);
    const reported = await reportPlates(plates, trimmed, formats, tools);
    const pressFormats = formats.filter((format): format is PressFormat =>
      PRESS_FORMATS.some((known) => known === format),
    );
    const press = await pressFiles({ job, plates, laid, formats: pressFormats, madeAt }, tools);
    const noProof = wantsProof(formats) && !targets.proof ? [NO_PROOF] : [];
    const report = {
      version: 1 as const,
      drawing: drawingOf(drawing ?? plates),
      regions: reportRegions(value('regions'), value('recipes')),
      plates: reported.plates,
      complaints: marked(
        [
          ...run.complaints,
          ...lintGraph(job.graph, nodeKinds),
          ...reported.complaints,
          ...laid.complaints,
          ...press.complaints,
          ...noProof,
          ...complaints,
        ],
        job.meant,
      ),
      timings: run.timings,
    };
    const sheetFile = formats.includes('job-sheet')
      ? [
          await jobSheet(
            {
              job,
              plates,
              trimmed,
              laid,
              rows: report.plates,
              stock: stockOf(job),
              faults: report.complaints,
              madeAt,
            },
            tools,
          ),
        ]
      : [];
    return { files: [...pictures, ...press.files, ...sheetFile], report };
  } finally {
    tidy();
    run.release();
  }
}

const NO_PROOF: Complaint = {
  code: 'no-proof',
  severity: 'warning',
  message: 'The job has no Proof node, so there is no proof; add one to see the print.',
};

function wantsProof(formats: readonly RenderFormat[]): boolean {
  return formats.some((format) => format.startsWith('proof'));
}

function targetsOf(
  job: Job,
  formats: readonly RenderFormat[],
): Record<string, End | null> & { proof: End | null } {
  const press = firstOf(job, 'press-file');
  const plates = feeding(job, press, 'plates');
  if (!press || !plates)
    throw new BadInput('the job delivers nothing: it needs a Press file node with plates wired to it');
  const fill = upstreamKind(job, press, 'fill-plates');
  return {
    plates,
    sheet: feeding(job, press, 'sheet'),
    proof: wantsProof(formats) ? output(firstOf(job, 'proof'), 'proof') : null,
    regions: feeding(job, fill, 'regions'),
    recipes: feeding(job, fill, 'recipes'),
    drawing: output(upstreamKind(job, press, 'line-drawing'), 'drawing'),
  };
}

function output(node: string | null, port: string): End | null {
  return node === null ? null : { node, port };
}

/** `plate-<order>-<plate-id>.png` */
function plateFile(plate: PlateValue): string {
  return `plate-${plate.order}-${plate.id}.png`;
}

/** Plates as PNG, cut to their trim, and the proof. */
async function picturesOf(
  { job, formats }: RenderInput,
  plates: PlatesValue,
  trimmed: readonly Plane[],
  proof: Value | undefined,
  tools: Tools,
): Promise<MadeFile[]> {
  const made: Promise<MadeFile>[] = [];
  const make = (name: string, bytes: Promise<Uint8Array>) =>
    made.push(bytes.then((done) => ({ name, bytes: done })));
  if (formats.includes('png'))
    for (const [i, plate] of plates.plates.entries())
      make(plateFile(plate), greyPng(trimmed[i]!, plates.ppi, tools));
  if (proof?.type === 'proof') {
    const { width, height, pixels, ppi } = proof;
    const rgb = { width, height, data: pixels, ppi };
    if (formats.includes('proof'))
      make('proof.png', tools.whole('encodePng', { ...rgb, bands: 3, srgb: true }));
    if (formats.includes('proof-jpeg')) make('proof.jpg', tools.whole('encodeJpeg', rgb));
    if (formats.includes('proof-pdf'))
      make('proof.pdf', tools.whole('proofPdf', { ...rgb, title: job.name }));
  }
  return Promise.all(made);
}

/** In the file 0 is solid and 255 is paper. */
async function greyPng(plane: Plane, ppi: number, tools: Tools): Promise<Uint8Array> {
  const { width, height } = plane;
  const grey = tools.plane(width, height);
  const table = Uint8Array.from({ length: 256 }, (_, v) => 255 - v);
  await tools.bands('toneTable', { from: plane, to: grey, table }, height);
  const bytes = await tools.whole('encodePng', {
    width,
    height,
    bands: 1,
    data: grey.data,
    ppi,
  });
  tools.free(grey.data);
  return bytes;
}

async function reportPlates(
  plates: PlatesValue,
  trimmed: readonly Plane[],
  formats: readonly RenderFormat[],
  tools: Tools,
) {
  const complaints: Complaint[] = [];
  const rows = plates.plates.map(async (plate, i) => {
    const mean = await tools.whole('mean', { data: trimmed[i]!.data });
    if (mean === 0)
      complaints.push({
        code: 'plate-empty',
        severity: 'warning',
        message: `Plate ${plate.order} (${plate.id}) is empty: nothing prints in ${plate.ink.name}. Give it a tint, or take it out of the ink set.`,
      });
    return {
      id: plate.id,
      ink: plate.ink.id,
      order: plate.order,
      pass: plate.pass,
      ppi: plates.ppi,
      file: formats.includes('png') ? plateFile(plate) : null,
      coveragePercent: mm3((mean * 100) / 255),
      ...(plate.screen ? { screen: plate.screen } : {}),
    };
  });
  return { plates: await Promise.all(rows), complaints };
}
