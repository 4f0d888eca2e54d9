import { freshFileName } from '../../../src/graph/assets.ts';
import type { Complaint } from '../../../src/graph/complaint.ts';
import type { Stock } from '../../../src/graph/inks.ts';
import type { Job } from '../../../src/graph/job.ts';
import { paperStock } from '../../../src/nodes/paper-stock.ts';
import { pressFile } from '../../../src/nodes/press-file.ts';
import { fileStem, plateFileStem } from '../../../src/press/file-names.ts';
import type { Tools } from '../../engine/evaluation.ts';
import type { PlatesValue, PlateValue } from '../../engine/values.ts';
import { printInput } from '../../nodes/print-input.ts';
import { firstOf, upstreamKind } from '../job-ends.ts';
import type { MadeFile } from '../task.ts';
import { filmOf } from './film.ts';
import { inBox, type LaidOut } from './laid-out.ts';
import { layerFile } from './layers.ts';
import { pressPdfFile } from './press-pdf-file.ts';

/** What a printer gets beside the PNGs of the plates. */
export const PRESS_FORMATS = ['grey-pdf', 'pdf', 'tiff', 'ora'] as const;
export type PressFormat = (typeof PRESS_FORMATS)[number];

export interface PressOrder {
  job: Job;
  plates: PlatesValue;
  laid: LaidOut;
  formats: readonly PressFormat[];
  /** ISO 8601 in UTC. */
  madeAt: string;
}

/** Files for the press, one after the other, and what is wrong with them. */
export async function pressFiles(
  order: PressOrder,
  tools: Tools,
): Promise<{ files: MadeFile[]; complaints: Complaint[] }> {
  const { job, formats } = order;
  const settings = pressFile.settings.parse(nodeOf(job, firstOf(job, pressFile.kind)!)?.settings ?? {});
  const complaints: Complaint[] = [];
  const stems = stemsOf(order, settings.fileNames, complaints);
  const makers: Record<PressFormat, () => Promise<MadeFile[]>> = {
    'grey-pdf': () => greyPdfs(order, stems, tools),
    pdf: () => pressPdfs(order, settings, tools),
    tiff: () => tiffs(order, settings, stems, complaints, tools),
    ora: () => layers(order, tools),
  };
  const files: MadeFile[] = [];
  for (const format of PRESS_FORMATS) if (formats.includes(format)) files.push(...(await makers[format]()));
  return { files, complaints };
}

type FileSettings = ReturnType<typeof pressFile.settings.parse>;

function nodeOf(job: Job, id: string | null) {
  return job.graph.nodes.find((node) => node.id === id);
}

/** A file name for each plate, told apart by numbers where the pattern does not. */
function stemsOf({ job, plates, laid }: PressOrder, pattern: string, complaints: Complaint[]): string[] {
  const colourway = job.colourways.find(({ id }) => id === job.colourway)?.name ?? '';
  const size = `${Math.round(plates.mm[0])}x${Math.round(plates.mm[1])}mm`;
  const side = laid.settings.side;
  const wanted = plates.plates.map(({ order, id, ink }) =>
    plateFileStem(pattern, {
      job: job.name,
      size,
      order: String(order),
      plate: id,
      ink: ink.name,
      colourway,
      side,
    }),
  );
  const stems: string[] = [];
  for (const stem of wanted) stems.push(freshFileName(stem, stems));
  const twice = wanted.find((stem, i) => stems[i] !== stem);
  if (twice !== undefined)
    complaints.push({
      code: 'file-names-alike',
      severity: 'warning',
      message: `Two plates would be called "${twice}"; the later ones got numbers. Put {order} or {plate} into the file names of Press file.`,
    });
  return stems;
}

async function greyPdfs({ job, plates, laid }: PressOrder, stems: readonly string[], tools: Tools) {
  const made = plates.plates.map(async (plate, at): Promise<MadeFile> => {
    const { width, height, data } = await filmOf(plates, at, laid, false, tools);
    const { trim, ppi } = laid.sheet;
    const bytes = await tools.whole('greyPdf', {
      width,
      height,
      grey: data,
      ppi,
      trim,
      title: titleOf(job, plate),
    });
    tools.free(data);
    return { name: `${stems[at]}.pdf`, bytes };
  });
  return Promise.all(made);
}

function titleOf(job: Job, plate: PlateValue): string {
  return `${job.name}, plate ${plate.order}: ${plate.ink.name}`;
}

async function tiffs(
  { plates, laid, job }: PressOrder,
  { tiff, tiffPages }: FileSettings,
  stems: readonly string[],
  complaints: Complaint[],
  tools: Tools,
): Promise<MadeFile[]> {
  const oneBit = tiff === 'one-bit';
  const { ppi } = laid.sheet;
  if (oneBit) complaints.push(...(await tintsLost(plates, tools)));
  const films = await Promise.all(plates.plates.map((_, at) => filmOf(plates, at, laid, oneBit, tools)));
  const { width, height } = films[0]!;
  if (tiffPages === 'together') {
    const data = tools.bytes(width * height * films.length);
    films.forEach((film, i) => {
      data.set(film.data, i * width * height);
      tools.free(film.data);
    });
    const bytes = await tools.whole('encodeTiff', { picture: { width, height, data, ppi }, depth: tiff });
    tools.free(data);
    return [{ name: `${fileStem(job.name)}.tif`, bytes }];
  }
  const made = films.map(async ({ data }, at): Promise<MadeFile> => {
    const bytes = await tools.whole('encodeTiff', { picture: { width, height, data, ppi }, depth: tiff });
    tools.free(data);
    return { name: `${stems[at]}.tif`, bytes };
  });
  return Promise.all(made);
}

/** Soft edges of lines are few; more between than this is a tint. */
const MOST_SOFT_SHARE = 0.05;

/** One bit a pixel holds no tints: they must be screened before. */
async function tintsLost(plates: PlatesValue, tools: Tools): Promise<Complaint[]> {
  const shares = await Promise.all(
    plates.plates.map(async ({ coverage }) => {
      const counts = await tools.whole('histogram', { data: coverage.data });
      const whole = coverage.data.length;
      return (whole - counts[0]! - counts[255]!) / whole;
    }),
  );
  return plates.plates
    .filter((_, i) => shares[i]! > MOST_SOFT_SHARE)
    .map(({ id }) => ({
      code: 'tints-lost',
      severity: 'error',
      message: `Plate ${id} has tints, and one bit a pixel holds none: they become solid or paper. Screen them with a Halftone before the Press file, or deliver grey.`,
    }));
}

async function pressPdfs(order: PressOrder, settings: FileSettings, tools: Tools): Promise<MadeFile[]> {
  const { job, plates, laid, madeAt } = order;
  const names = plates.plates.map(({ id, ink }) => (settings.plateNames === 'inks' ? ink.name : id));
  const press = firstOf(job, pressFile.kind)!;
  const bytes = await pressPdfFile(
    {
      plates,
      laid,
      names,
      kind: settings.pdf,
      print: printInput(plates, stockOf(job)),
      title: job.name,
      madeAt,
      trapped: upstreamKind(job, press, 'trap') !== null,
    },
    tools,
  );
  return [{ name: 'plates.pdf', bytes }];
}

async function layers({ job, plates, laid }: PressOrder, tools: Tools): Promise<MadeFile[]> {
  const planes = await Promise.all(plates.plates.map((plate) => inBox(plate, laid, laid.sheet.trim, tools)));
  const names = plates.plates.map(({ ink }) => ink.name);
  const bytes = await layerFile(planes, names, printInput(plates, stockOf(job)), plates.ppi, tools);
  return [{ name: `${fileStem(job.name)}.ora`, bytes }];
}

/** The stock of the job's first Paper stock, or the usual one. */
export function stockOf(job: Job): Stock {
  const { lab, surface } = paperStock.settings.parse(
    nodeOf(job, firstOf(job, paperStock.kind))?.settings ?? {},
  );
  return { lab, surface };
}
