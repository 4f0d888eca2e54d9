import { PDFDocument, type PDFFont, type PDFPage, rgb, StandardFonts } from '@cantoo/pdf-lib';
import { CAUTIONS, type JobSheet, type JobSheetPlate } from '../../../src/press/job-sheet.ts';

const MM = 72 / 25.4;
const PAGE = { width: 210 * MM, height: 297 * MM, margin: 16 * MM };
const INK = rgb(0.13, 0.13, 0.12);
const QUIET = rgb(0.4, 0.38, 0.34);
const THUMBNAIL = 26 * MM;
/** WinAnsi as far as the standard fonts have it (ISO 32000-1, annex D). */
const WRITABLE = /^[\x20-\x7e\u00a0-\u00ff\u2013\u2014\u2018\u2019\u201c\u201d\u2022\u2026\u20ac]*$/;

/** Writes downwards and starts a new page where the old one ends. */
class Column {
  y = 0;
  #page: PDFPage | null = null;

  constructor(
    private readonly document: PDFDocument,
    private readonly plain: PDFFont,
    private readonly bold: PDFFont,
  ) {}

  /** The page that has room for so much; a new one where it has not. */
  room(height: number): PDFPage {
    if (!this.#page || this.y - height < PAGE.margin) {
      this.#page = this.document.addPage([PAGE.width, PAGE.height]);
      this.y = PAGE.height - PAGE.margin;
    }
    return this.#page;
  }

  text(text: string, options: { size?: number; bold?: boolean; quiet?: boolean; left?: number } = {}): void {
    const { size = 10, bold = false, quiet = false, left = 0 } = options;
    const font = bold ? this.bold : this.plain;
    const width = PAGE.width - 2 * PAGE.margin - left;
    for (const line of wrapped(written(text), font, size, width)) {
      const page = this.room(size * 1.4);
      this.y -= size * 1.4;
      page.drawText(line, { x: PAGE.margin + left, y: this.y, size, font, color: quiet ? QUIET : INK });
    }
  }

  heading(text: string): void {
    this.space(4);
    const page = this.room(40);
    this.y -= 4;
    const ends = { start: { x: PAGE.margin, y: this.y }, end: { x: PAGE.width - PAGE.margin, y: this.y } };
    page.drawLine({ ...ends, thickness: 0.5, color: QUIET });
    this.text(text, { bold: true, size: 11 });
  }

  space(mm: number): void {
    this.y -= mm * MM;
  }
}

/** What the font has no letters for stands as a question mark. */
function written(text: string): string {
  return [...text].map((letter) => (WRITABLE.test(letter) ? letter : '?')).join('');
}

function wrapped(text: string, font: PDFFont, size: number, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && font.widthOfTextAtSize(longer, size) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line];
}

/** The sheet that goes with a job to the press: order, inks, sheet, marks, plates in small, faults, cautions; A4. */
export async function jobSheetPdf(sheet: JobSheet): Promise<Uint8Array<ArrayBuffer>> {
  const document = await PDFDocument.create();
  const madeAt = new Date(sheet.madeAt);
  document.setTitle(sheet.title);
  document.setProducer('Keyblock');
  document.setCreator('Keyblock');
  document.setCreationDate(madeAt);
  document.setModificationDate(madeAt);
  const plain = await document.embedFont(StandardFonts.Helvetica);
  const bold = await document.embedFont(StandardFonts.HelveticaBold);
  const column = new Column(document, plain, bold);
  column.text(sheet.title, { bold: true, size: 20 });
  column.text(`${sheet.colourway}, ${sheet.madeAt.slice(0, 10)}`, { quiet: true });
  sheetPart(column, sheet);
  column.heading(
    `Print order, ${sheet.plates.length} ${sheet.plateWord}${sheet.plates.length === 1 ? '' : 's'}`,
  );
  for (const plate of sheet.plates) await platePart(document, column, plate, sheet.plateWord);
  faultPart(column, sheet);
  column.heading('Cautions');
  for (const caution of CAUTIONS) column.text(caution, { size: 9 });
  const bytes = await document.save({ useObjectStreams: false });
  return new Uint8Array(bytes);
}

function sheetPart(column: Column, sheet: JobSheet): void {
  const size = ([w, h]: readonly [number, number]) => `${w.toFixed(1)} x ${h.toFixed(1)} mm`;
  column.heading('Sheet');
  const rows: [string, string][] = [
    ['Press', sheet.press ?? 'not chosen'],
    ['Stock', sheet.stock],
    ['Sheet', `${size(sheet.sheetMm)}, ${sheet.side}, enters by its ${sheet.feedEdge} edge`],
    ['Trim', `${size(sheet.trimMm)}, bleed ${sheet.bleedMm} mm`],
    ['Marks', sheet.marks.length === 0 ? 'none' : sheet.marks.join(', ')],
    ...(sheet.film ? [['Film', sheet.film] as [string, string]] : []),
    ['Run', '_________ sheets and _________ over'],
  ];
  for (const [name, value] of rows) {
    const y = column.y;
    column.text(name, { quiet: true });
    column.y = y;
    column.text(value, { left: 22 * MM });
  }
}

async function platePart(
  document: PDFDocument,
  column: Column,
  plate: JobSheetPlate,
  word: string,
): Promise<void> {
  const image = await document.embedPng(plate.thumbnail);
  const scale = Math.min(THUMBNAIL / image.width, THUMBNAIL / image.height);
  column.space(2);
  const page = column.room(THUMBNAIL + 4);
  const [width, height] = [image.width * scale, image.height * scale];
  const top = column.y;
  page.drawImage(image, { x: PAGE.margin, y: top - height, width, height });
  page.drawRectangle({
    x: PAGE.margin,
    y: top - height,
    width,
    height,
    borderColor: QUIET,
    borderWidth: 0.3,
  });
  const left = THUMBNAIL + 6 * MM;
  column.text(`${plate.order}  ${WRITABLE.test(plate.ink) ? plate.ink : plate.id}`, {
    bold: true,
    size: 12,
    left,
  });
  column.text(`${word} "${plate.id}", pass ${plate.pass}`, { left });
  column.text(`covers ${plate.coveragePercent.toFixed(1)} % of the trim`, { left });
  column.text(plate.tone, { left, quiet: true, size: 9 });
  column.y = Math.min(column.y, top - THUMBNAIL);
}

/** So many faults are written out. */
const MOST_FAULTS = 12;

function faultPart(column: Column, { faults }: JobSheet): void {
  column.heading(
    faults.length === 0 ? 'No complaint about the files; the press check is apart' : 'To look at',
  );
  for (const { message, meant } of faults.slice(0, MOST_FAULTS))
    column.text(meant ? `Meant: ${message}` : message, { size: 9 });
  if (faults.length > MOST_FAULTS)
    column.text(`and ${faults.length - MOST_FAULTS} more`, { size: 9, quiet: true });
}
