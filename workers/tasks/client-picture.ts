import { BadInput, type Complaint } from '../../src/graph/complaint.ts';
import type { Job } from '../../src/graph/job.ts';
import { xyzOfLab } from '../../src/ink/lab.ts';
import { screenValuesOf } from '../../src/ink/screen.ts';
import { paperStock } from '../../src/nodes/paper-stock.ts';
import type { ProofValue } from '../engine/values.ts';
import { feeding, firstOf } from './job-ends.ts';
import { ENCODING, LIGHT } from './screen-light.ts';
import type { MadeFile, TaskContext } from './task.ts';

export interface ClientPictureInput {
  job: Job;
  /** Wanted width; a proof is never made larger. */
  widthPx: number;
  /** `paper`: the proof as it is. `none`: the ink alone, on a transparent ground. */
  ground: 'paper' | 'none';
}

export interface ClientPicture {
  /** One RGB or RGBA PNG tagged sRGB. */
  files: MadeFile[];
  width: number;
  height: number;
  complaints: Complaint[];
}

/**
 * A picture of the print for a client: the full proof, scaled down by box means in linear light.
 *
 * Without paper the proof is made on the same stock without tooth and fibres, so that the bare sheet is one colour.
 * Ink is then where a pixel is darker than that: alpha = 1 - least of pixel / paper over the channels, and the colour
 * is the one that gives the pixel back when it is laid over the paper. On another ground it is an approximation.
 *
 * @throws BadInput when the job has no Proof node with a paper
 */
export async function clientPicture(input: ClientPictureInput, context: TaskContext): Promise<ClientPicture> {
  const { engine, flag, onProgress } = context;
  const { ground, widthPx } = input;
  const node = firstOf(input.job, 'proof');
  if (!node) throw new BadInput('the job has no Proof node, so there is no picture of the print; add one');
  const job = ground === 'none' ? onFlatPaper(input.job) : input.job;
  const run = await engine.evaluate({ job, targets: [{ node, port: 'proof' }], scale: 1 }, flag, onProgress);
  const { tools, tidy } = engine.toolBox(flag);
  try {
    const proof = run.values[0] as ProofValue;
    const width = Math.max(1, Math.min(proof.width, Math.round(widthPx)));
    const height = Math.max(1, Math.round((proof.height * width) / proof.width));
    const bands = ground === 'none' ? 4 : 3;
    const data = tools.bytes(width * height * bands);
    const shrink = {
      from: proof.pixels,
      width: proof.width,
      height: proof.height,
      to: data,
      toWidth: width,
      toHeight: height,
      light: LIGHT,
      encoding: ENCODING,
      ground: ground === 'none' ? bareColour(job) : null,
    };
    await tools.bands('shrinkProof', shrink, height);
    const ppi = (proof.ppi * width) / proof.width;
    const bytes = await tools.whole('encodePng', { width, height, bands, data, ppi, srgb: true });
    return { files: [{ name: 'print.png', bytes }], width, height, complaints: run.complaints };
  } finally {
    tidy();
    run.release();
  }
}

/** Settings of a Paper stock that is one colour all over. */
const BARE = {
  toothPercent: 0,
  fibresPercent: 0,
  flecksPerDm2: 0,
  mould: 'wove',
  deckleMm: 0,
  inkOnToothPercent: 0,
  asset: null,
} as const;

/** The job with nothing on its sheets but their colour. */
function onFlatPaper(job: Job): Job {
  const nodes = job.graph.nodes.map((node) =>
    node.kind === paperStock.kind ? { ...node, settings: { ...node.settings, ...BARE } } : node,
  );
  return { ...job, graph: { ...job.graph, nodes } };
}

/** How the screen shows the bare sheet under the proof. */
function bareColour(job: Job): [number, number, number] {
  const paper = feeding(job, firstOf(job, 'proof'), 'paper');
  const node = job.graph.nodes.find(({ id, kind }) => id === paper?.node && kind === paperStock.kind);
  if (!node) throw new BadInput('no Paper stock is wired to the Proof; wire one to it');
  const { lab } = paperStock.settings.parse(node.settings);
  const byte = (value: number) => Math.min(255, Math.max(0, Math.round(value)));
  const [r, g, b] = screenValuesOf(xyzOfLab(lab));
  return [byte(r), byte(g), byte(b)];
}
