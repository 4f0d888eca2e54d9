import { BadInput, type Complaint } from '../../src/graph/complaint.ts';
import type { End, Job } from '../../src/graph/job.ts';
import type { Tools } from '../engine/evaluation.ts';
import type { DrawingValue, PlatesValue, ProofValue, RegionsValue, Value } from '../engine/values.ts';
import { plateToShow, proofToShow } from './fit-to-show.ts';
import { feeding, firstOf } from './job-ends.ts';
import { mapColours } from './map-colours.ts';
import type { TaskContext } from './task.ts';

/** The proof, the regions as a map, the proof gone pale for marks of register slack, or one plate as it enters the Press file. */
export type Show =
  | { view: 'proof' }
  | { view: 'regions' }
  | { view: 'slack' }
  | { view: 'plate'; plate: string };

export interface PictureInput {
  job: Job;
  show: Show;
  /** 1 for full, n for 1/n each way. */
  scale: number;
}

export interface Picture {
  width: number;
  height: number;
  ppi: number;
  scale: number;
  /** RGBA, sRGB. */
  pixels: Uint8ClampedArray<ArrayBuffer>;
  complaints: Complaint[];
}

/**
 * A picture to show.
 *
 * @throws BadInput when the job has no such node or plate
 */
export async function picture(input: PictureInput, context: TaskContext): Promise<Picture> {
  const { engine, flag, onProgress } = context;
  const { job, show, scale } = input;
  const run = await engine.evaluate({ job, targets: endsOf(job, show), scale }, flag, onProgress);
  const { tools, tidy } = engine.toolBox(flag);
  try {
    return { ...(await pixelsOf(run.values, show, tools)), scale, complaints: run.complaints };
  } finally {
    tidy();
    run.release();
  }
}

function endsOf(job: Job, show: Show): End[] {
  if (show.view === 'regions') {
    const node = firstOf(job, 'closed-regions');
    const drawing = feeding(job, node, 'drawing');
    if (!node || !drawing)
      throw new BadInput('the job has no Closed regions node with a drawing wired to it');
    return [{ node, port: 'regions' }, drawing];
  }
  if (show.view === 'plate') {
    const plates = feeding(job, firstOf(job, 'press-file'), 'plates');
    if (!plates) throw new BadInput('no plates reach a Press file; wire some to it');
    return [plates];
  }
  const node = firstOf(job, 'proof');
  if (!node) throw new BadInput('the job has no Proof node to show; add one');
  return [{ node, port: 'proof' }];
}

async function pixelsOf(
  values: Value[],
  show: Show,
  tools: Tools,
): Promise<Pick<Picture, 'width' | 'height' | 'ppi' | 'pixels'>> {
  if (show.view === 'regions') return map(values[0] as RegionsValue, values[1] as DrawingValue);
  if (show.view === 'proof' || show.view === 'slack') {
    const { width, height, ppi, pixels } = await proofToShow(values[0] as ProofValue, tools);
    const shown = opaque(pixels);
    return { width, height, ppi, pixels: show.view === 'slack' ? pale(shown) : shown };
  }
  const plates = values[0] as PlatesValue;
  const shown = await plateToShow(plates, show.plate, tools);
  if (!shown) {
    const held = plates.plates.map(({ id }) => id).join(', ');
    throw new BadInput(`there is no plate "${show.plate}"; the job holds ${held}`);
  }
  const { width, height, data } = shown.coverage;
  return { width, height, ppi: shown.ppi, pixels: film(data) };
}

/** Regions in map tones under the line. */
function map(regions: RegionsValue, drawing: DrawingValue) {
  const { width, height, data } = regions.labels;
  const line = drawing.line.data;
  const colours = mapColours(regions.table);
  const pixels = new Uint8ClampedArray(width * height * 4);
  for (let i = 0; i < data.length; i++) {
    const [r, g, b] = colours[data[i]!]!;
    const light = 1 - (line[i]! * 0.85) / 255;
    pixels[i * 4] = r * light;
    pixels[i * 4 + 1] = g * light;
    pixels[i * 4 + 2] = b * light;
    pixels[i * 4 + 3] = 255;
  }
  return { width, height, ppi: regions.ppi, pixels };
}

/** RGB as RGBA. */
function opaque(rgb: Uint8Array): Uint8ClampedArray<ArrayBuffer> {
  const rgba = new Uint8ClampedArray((rgb.length / 3) * 4);
  for (let from = 0, to = 0; from < rgb.length; from += 3, to += 4) {
    rgba[to] = rgb[from]!;
    rgba[to + 1] = rgb[from + 1]!;
    rgba[to + 2] = rgb[from + 2]!;
    rgba[to + 3] = 255;
  }
  return rgba;
}

/** How much of a proof is left under marks. */
const LEFT_PALE = 0.3;

/** The same colours, most of the way to white; changes what it is given. */
function pale(rgba: Uint8ClampedArray<ArrayBuffer>): Uint8ClampedArray<ArrayBuffer> {
  for (let i = 0; i < rgba.length; i++) rgba[i] = 255 - LEFT_PALE * (255 - rgba[i]!);
  return rgba;
}

/** Coverage as black on white. */
function film(coverage: Uint8Array): Uint8ClampedArray<ArrayBuffer> {
  const rgba = new Uint8ClampedArray(coverage.length * 4).fill(255);
  for (let i = 0; i < coverage.length; i++) {
    const grey = 255 - coverage[i]!;
    rgba[i * 4] = grey;
    rgba[i * 4 + 1] = grey;
    rgba[i * 4 + 2] = grey;
  }
  return rgba;
}
