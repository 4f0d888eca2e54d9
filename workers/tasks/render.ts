import { BadInput, type Complaint } from '../../src/graph/complaint.ts';
import type { End, Job } from '../../src/graph/job.ts';
import type { Report } from '../../src/graph/report.ts';
import { lintGraph } from '../../src/graph/wiring.ts';
import { nodeKinds } from '../../src/nodes/registry.ts';
import type { Tools } from '../engine/evaluation.ts';
import type { PlatesValue, PlateValue, Value } from '../engine/values.ts';
import { pressPdfName } from '../files/names.ts';
import { feeding, firstOf, upstreamKind } from './job-ends.ts';
import { drawingOf, mm3, reportRegions } from './report-parts.ts';
import type { MadeFile, TaskContext } from './task.ts';

export const RENDER_FORMATS = ['png', 'grey-pdf', 'proof'] as const;
export type RenderFormat = (typeof RENDER_FORMATS)[number];

export interface RenderInput {
  job: Job;
  /** None: only the report. */
  formats: readonly RenderFormat[];
  /** 1 for full, n for a preview of 1/n. */
  scale: number;
}

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
    const files = await filesOf(job, plates, value('proof'), formats, tools);
    const reported = await reportPlates(plates, formats, tools);
    const noProof = formats.includes('proof') && !targets.proof ? [NO_PROOF] : [];
    const report = {
      version: 1 as const,
      drawing: drawingOf(value('drawing') ?? plates),
      regions: reportRegions(value('regions'), value('recipes')),
      plates: reported.plates,
      complaints: [
        ...run.complaints,
        ...lintGraph(job.graph, nodeKinds),
        ...reported.complaints,
        ...noProof,
        ...complaints,
      ],
      timings: run.timings,
    };
    return { files, report };
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
    proof: formats.includes('proof') ? output(firstOf(job, 'proof'), 'proof') : null,
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

async function filesOf(
  job: Job,
  plates: PlatesValue,
  proof: Value | undefined,
  formats: readonly RenderFormat[],
  tools: Tools,
): Promise<MadeFile[]> {
  const { ppi } = plates;
  const made: Promise<MadeFile>[] = [];
  const make = (name: string, bytes: Promise<Uint8Array>) =>
    made.push(bytes.then((done) => ({ name, bytes: done })));
  for (const plate of plates.plates) {
    const { width, height, data } = plate.coverage;
    if (formats.includes('png')) make(plateFile(plate), greyPng(plate, ppi, tools));
    if (formats.includes('grey-pdf')) {
      const title = `${job.name}, plate ${plate.order}: ${plate.ink.name}`;
      make(
        pressPdfName(job.name, plates.mm, plate),
        tools.whole('greyPdf', { width, height, data, ppi, title }),
      );
    }
  }
  if (proof?.type === 'proof') {
    const { width, height, pixels } = proof;
    make('proof.png', tools.whole('encodePng', { width, height, bands: 3, data: pixels, ppi, srgb: true }));
  }
  return Promise.all(made);
}

/** In the file 0 is solid and 255 is paper. */
async function greyPng(plate: PlateValue, ppi: number, tools: Tools): Promise<Uint8Array> {
  const { width, height } = plate.coverage;
  const grey = tools.plane(width, height);
  const table = Uint8Array.from({ length: 256 }, (_, v) => 255 - v);
  await tools.bands('toneTable', { from: plate.coverage, to: grey, table }, height);
  const bytes = await tools.whole('encodePng', { width, height, bands: 1, data: grey.data, ppi });
  tools.free(grey.data);
  return bytes;
}

async function reportPlates(plates: PlatesValue, formats: readonly RenderFormat[], tools: Tools) {
  const complaints: Complaint[] = [];
  const rows = plates.plates.map(async (plate) => {
    const mean = await tools.whole('mean', { data: plate.coverage.data });
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
    };
  });
  return { plates: await Promise.all(rows), complaints };
}
