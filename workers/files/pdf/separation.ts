import type { Lab } from '../../../src/graph/inks.ts';
import type { PdfBuilder, Ref } from './builder.ts';
import { numbers, pdfName } from './objects.ts';

/** Lab of nominal tints 0..1, one for each plate of the print. */
export type LabOf = (tints: readonly number[]) => Lab;

/** White of D50 as ICC has it. */
const D50_WHITE = [0.9642, 1, 0.8249];
const LAB_SPACE = `[/Lab << /WhitePoint [${numbers(D50_WHITE)}] /Range [-128 127 -128 127] >>]`;
const LAB_RANGES = [
  [0, 100],
  [-128, 127],
  [-128, 127],
] as const;

/** Samples on every axis, by how many plates there are: a few thousand in all. */
const MOST_SAMPLES = 5000;
const MOST_ON_AN_AXIS = 65;

/**
 * A sampled function (ISO 32000-1, 7.10.2) from the tints of all plates to Lab, as the print model has them; what
 * lies between samples is interpolated.
 */
function tintFunction(pdf: PdfBuilder, count: number, labOf: LabOf): Ref {
  const size = samplesOnAxis(count);
  const nodes = size ** count;
  const data = new Uint8Array(nodes * 3 * 2);
  for (let node = 0; node < nodes; node++) {
    const tints = Array.from(
      { length: count },
      (_, ink) => (Math.floor(node / size ** ink) % size) / (size - 1),
    );
    labOf(tints).forEach((value, axis) => {
      const [least, most] = LAB_RANGES[axis]!;
      const share = (Math.min(most, Math.max(least, value)) - least) / (most - least);
      const sample = Math.round(share * 65_535);
      data[(node * 3 + axis) * 2] = sample >>> 8;
      data[(node * 3 + axis) * 2 + 1] = sample;
    });
  }
  const domain = numbers(Array.from({ length: count * 2 }, (_, i) => i % 2));
  const entries =
    `/FunctionType 0 /Domain [${domain}] /Range [${numbers(LAB_RANGES.flat())}] ` +
    `/Size [${numbers(Array(count).fill(size))}] /BitsPerSample 16`;
  return pdf.stream(entries, data);
}

function samplesOnAxis(count: number): number {
  let size = 2;
  while (size < MOST_ON_AN_AXIS && (size + 1) ** count <= MOST_SAMPLES) size++;
  return size;
}

/** The colour space of one plate; its alternate is the colour of that plate alone. */
export function separationSpace(pdf: PdfBuilder, names: readonly string[], at: number, labOf: LabOf): Ref {
  const alone = tintFunction(pdf, 1, ([tint]) => labOf(names.map((_, i) => (i === at ? tint! : 0))));
  return pdf.add(`[/Separation ${pdfName(names[at]!)} ${LAB_SPACE} ${alone}]`);
}

/** The colour space of all plates at once, in print order; its alternate is the predicted overprint. */
export function deviceNSpace(pdf: PdfBuilder, names: readonly string[], labOf: LabOf): Ref {
  const together = tintFunction(pdf, names.length, labOf);
  const each = names.map((name, at) => `${pdfName(name)} ${separationSpace(pdf, names, at, labOf)}`);
  const listed = names.map(pdfName).join(' ');
  return pdf.add(`[/DeviceN [${listed}] ${LAB_SPACE} ${together} << /Colorants << ${each.join(' ')} >> >>]`);
}

/** The colour space that prints on every plate, for marks. */
export function allPlatesSpace(pdf: PdfBuilder): Ref {
  const fade = pdf.add('<< /FunctionType 2 /Domain [0 1] /C0 [1] /C1 [0] /N 1 >>');
  return pdf.add(`[/Separation /All /DeviceGray ${fade}]`);
}
