import { BadInput } from '../../../src/graph/complaint.ts';
import type { PrintInput } from '../../../src/ink/model-input.ts';
import type { Tools } from '../../engine/evaluation.ts';
import type { PlatesValue } from '../../engine/values.ts';
import type { PressPdf, PressPixels } from '../../files/pdf/press-pdf.ts';
import type { Plane, SharedBytes } from '../../kernels/plane.ts';
import { filmOf } from './film.ts';
import { inBox, type LaidOut } from './laid-out.ts';

export interface PressPdfOrder {
  plates: PlatesValue;
  laid: LaidOut;
  kind: PressPdf['pixels']['kind'];
  names: readonly string[];
  print: PrintInput;
  title: string;
  madeAt: string;
  trapped: boolean;
}

/** All plates on one page. @throws BadInput when two plates would have one name */
export async function pressPdfFile(order: PressPdfOrder, tools: Tools): Promise<Uint8Array> {
  const { laid, kind, names, print, title, madeAt, trapped } = order;
  refuseNames(names);
  const { width, height, ppi, trim, bleed } = laid.sheet;
  const pixels = await pixelsOf(order, tools);
  const marks = kind === 'film' ? [] : laid.marks;
  const page = { width, height, ppi, trim, bleed };
  return tools.whole('pressPdf', { title, madeAt, page, names, print, pixels, marks, trapped });
}

/** A PDF keeps these names to itself. */
const RESERVED = ['All', 'None'];

function refuseNames(names: readonly string[]): void {
  const reserved = names.find((name) => RESERVED.includes(name));
  if (reserved)
    throw new BadInput(
      `no plate of a press PDF can be called "${reserved}": that word means something of its own there. Rename it.`,
    );
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  if (twice)
    throw new BadInput(
      `two plates of the press PDF would be called "${twice}"; call plates by their own names in Press file, or rename an ink`,
    );
}

async function pixelsOf({ plates, laid, kind }: PressPdfOrder, tools: Tools): Promise<PressPixels> {
  const count = plates.plates.length;
  if (kind === 'film') {
    const pictures = plates.plates.map(async (_, at) => {
      const { width, height, data } = await filmOf(plates, at, laid, true, tools);
      const fax = await tools.whole('encodeFax', { width, height, data, ppi: laid.sheet.ppi });
      tools.free(data);
      return fax;
    });
    return { kind, pictures: await Promise.all(pictures) };
  }
  const planes = await Promise.all(plates.plates.map((plate) => inBox(plate, laid, laid.sheet.bleed, tools)));
  const { width } = planes[0]!;
  if (kind === 'by-plate') {
    const pictures = planes.map(({ data }) =>
      tools.whole('deflated', { data, rowBytes: width, components: 1 }),
    );
    return { kind, pictures: await Promise.all(pictures) };
  }
  const data = await woven(planes, tools);
  const picture = await tools.whole('deflated', { data, rowBytes: width * count, components: count });
  for (const plane of planes) tools.free(plane.data);
  tools.free(data);
  return { kind, picture };
}

async function woven(planes: readonly Plane[], tools: Tools): Promise<SharedBytes> {
  const { width, height, data } = planes[0]!;
  if (planes.length === 1) return data;
  const to = tools.bytes(width * height * planes.length);
  await tools.bands('interleave', { planes, to }, height);
  return to;
}
