import { BadInput } from '../../src/graph/complaint.ts';
import type { Job } from '../../src/graph/job.ts';
import { recipeOfShares } from '../../src/graph/recipe.ts';
import { plateSvg, printedSvg } from '../../src/ink/form/form-svg.ts';
import { type FormLayout, formLayout, type Page } from '../../src/ink/form/layout.ts';
import { printModel } from '../../src/ink/model.ts';
import { screenOf } from '../../src/ink/screen.ts';
import { type Print, printOf } from '../../src/nodes/print.ts';
import type { Tools } from '../engine/evaluation.ts';
import { openPicture } from '../nodes/open-picture.ts';
import type { MadeFile, TaskContext } from './task.ts';

export interface PressFormInput {
  job: Job;
  page: Page;
  /** Of the plates; the predicted picture of the form is made at most at 150. */
  ppi: number;
}

const SCREEN_PPI = 150;

/** The layout of a job's press test form. @throws BadInput when the job has no inks or the page no room */
export function formOf(job: Job, page: Page): { layout: FormLayout; print: Print } {
  const print = printOf(job.graph.nodes);
  if (!print) throw new BadInput('the job has no Ink set to make a form for');
  const plates = print.plates.map((id, i) => ({ id, ink: print.input.inks[i]!.id }));
  try {
    return { layout: formLayout(plates, page), print };
  } catch (error) {
    throw new BadInput((error as Error).message);
  }
}

/**
 * The press test form of a job's inks: every plate as PNG and as PDF at its printed size, the form as it is
 * predicted to print (`chart.png`), and `chart.json` with place, recipe and predicted colour of every patch.
 *
 * @throws BadInput when the job has no inks or the page no room for the form
 */
export async function pressForm(
  { job, page, ppi }: PressFormInput,
  { engine, flag, onProgress }: TaskContext,
): Promise<{ files: MadeFile[] }> {
  const { layout, print } = formOf(job, page);
  const { tools, tidy } = engine.toolBox(flag);
  const steps = layout.plates.length + 1;
  try {
    const files: MadeFile[] = [];
    for (const [at, plate] of layout.plates.entries()) {
      onProgress({ node: plate.id, done: at, of: steps });
      files.push(...(await plateFiles(job, layout, at, ppi, tools)));
    }
    onProgress({ node: 'chart', done: steps - 1, of: steps });
    const model = printModel(print.input);
    const colourOf = (tints: readonly number[]) => screenOf(model.labOf(tints)).hex;
    const drawn = await draw(printedSvg(layout, colourOf), 'chart', Math.min(ppi, SCREEN_PPI), tools);
    const chart = await tools.whole('encodePng', {
      ...drawn,
      bands: 3,
      ppi: Math.min(ppi, SCREEN_PPI),
      srgb: true,
    });
    files.push({ name: 'chart.png', bytes: chart });
    const patches = layout.patches.map(({ id, tints, x, y, width, height }) => {
      const lab = model.labOf(tints);
      const boxMm = [x, y, x + width, y + height];
      return {
        id,
        recipe: recipeOfShares(tints, print.plates),
        boxMm,
        lab: lab.map(hundredths),
        ...screenOf(lab),
      };
    });
    const told = {
      version: 1,
      page,
      plates: layout.plates,
      corners: layout.corners,
      patches,
      notes: model.notes,
    };
    files.push({ name: 'chart.json', bytes: new TextEncoder().encode(`${JSON.stringify(told, null, 2)}\n`) });
    return { files };
  } finally {
    tidy();
  }
}

const hundredths = (value: number) => Math.round(value * 100) / 100;

async function plateFiles(
  job: Job,
  layout: FormLayout,
  at: number,
  ppi: number,
  tools: Tools,
): Promise<MadeFile[]> {
  const { id } = layout.plates[at]!;
  const stem = `form-${at + 1}-${id}`;
  const { width, height, data } = await draw(plateSvg(layout, at), stem, ppi, tools);
  const grey = tools.bytes(width * height);
  for (let i = 0; i < grey.length; i++) grey[i] = data[i * 3]!;
  const png = await tools.whole('encodePng', { width, height, bands: 1, data: grey, ppi });
  const title = `${job.name}, press test, plate ${at + 1}: ${id}`;
  const pdf = await tools.whole('greyPdf', { width, height, grey, ppi, title });
  for (const view of [data, grey]) tools.free(view);
  return [
    { name: `${stem}.png`, bytes: png },
    { name: `${stem}.pdf`, bytes: pdf },
  ];
}

/** An SVG drawn out, as RGB. */
async function draw(svg: string, name: string, ppi: number, tools: Tools) {
  const bytes = new TextEncoder().encode(svg);
  const { head, pixels } = await openPicture({ name: `${name}.svg`, bytes }, { vectorPpi: ppi }, tools);
  const { width, height, bands } = head;
  const data = tools.bytes(width * height * 3);
  for (let i = 0; i < width * height; i++)
    for (let band = 0; band < 3; band++) data[i * 3 + band] = pixels[i * bands + (bands >= 3 ? band : 0)]!;
  tools.free(pixels);
  return { width, height, data };
}
