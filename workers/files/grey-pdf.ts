import { zlibSync } from 'fflate';
import { joinBytes, latinBytes } from './bytes.ts';

const POINTS_PER_INCH = 72;
const BINARY_MARK = '%\xe2\xe3\xcf\xd3';
const IMAGE = 4;
const INFO = 6;

/**
 * A PDF 1.4 of one plate: one page of exactly its physical size holding one 8-bit DeviceGray image at
 * 100%, solid black. The same plate always gives the same bytes.
 * @param plate.data `width * height` bytes, 0 paper .. 255 solid
 */
export function greyPdf(plate: {
  width: number;
  height: number;
  data: Uint8Array;
  ppi: number;
  title: string;
}): Uint8Array<ArrayBuffer> {
  const { width, height, data, ppi, title } = plate;
  if (data.length !== width * height) throw new Error('data is not width * height bytes');
  const w = points(width, ppi);
  const h = points(height, ppi);
  const pixels = zlibSync(inverse(data), { level: 6 });
  const content = `q ${w} 0 0 ${h} 0 0 cm /Plate Do Q`;
  const image =
    `<< /Type /XObject /Subtype /Image /Width ${width} /Height ${height} /ColorSpace /DeviceGray ` +
    `/BitsPerComponent 8 /Filter /FlateDecode /Length ${pixels.length} >>\nstream\n`;
  return assemble([
    [latinBytes('<< /Type /Catalog /Pages 2 0 R >>')],
    [latinBytes('<< /Type /Pages /Kids [3 0 R] /Count 1 >>')],
    [
      latinBytes(
        `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 ${w} ${h}] /TrimBox [0 0 ${w} ${h}] ` +
          `/Resources << /XObject << /Plate ${IMAGE} 0 R >> >> /Contents 5 0 R >>`,
      ),
    ],
    [latinBytes(image), pixels, latinBytes('\nendstream')],
    [latinBytes(`<< /Length ${content.length} >>\nstream\n${content}\nendstream`)],
    [latinBytes(`<< /Title ${textString(title)} >>`)],
  ]);
}

/** Objects numbered from 1, the first the catalogue, with header, cross-reference table and trailer. */
function assemble(objects: Uint8Array[][]): Uint8Array<ArrayBuffer> {
  const parts: Uint8Array[] = [latinBytes(`%PDF-1.4\n${BINARY_MARK}\n`)];
  let length = parts[0]!.length;
  const offsets = objects.map((body, i) => {
    const object = [latinBytes(`${i + 1} 0 obj\n`), ...body, latinBytes('\nendobj\n')];
    const offset = length;
    for (const part of object) length += part.length;
    parts.push(...object);
    return offset;
  });
  const rows = offsets.map((offset) => `${String(offset).padStart(10, '0')} 00000 n \n`).join('');
  const size = objects.length + 1;
  parts.push(
    latinBytes(
      `xref\n0 ${size}\n0000000000 65535 f \n${rows}trailer\n` +
        `<< /Size ${size} /Root 1 0 R /Info ${INFO} 0 R >>\nstartxref\n${length}\n%%EOF\n`,
    ),
  );
  return joinBytes(parts);
}

function inverse(data: Uint8Array): Uint8Array {
  const inverted = new Uint8Array(data.length);
  for (let i = 0; i < data.length; i++) inverted[i] = 255 - data[i]!;
  return inverted;
}

function points(pixels: number, ppi: number): string {
  return String(Number(((pixels * POINTS_PER_INCH) / ppi).toFixed(4)));
}

/** A text string in UTF-16BE (PDF 1.4, section 3.8.1), written in hex. */
function textString(text: string): string {
  const units = Array.from({ length: text.length }, (_, i) =>
    text.charCodeAt(i).toString(16).padStart(4, '0'),
  );
  return `<FEFF${units.join('').toUpperCase()}>`;
}
