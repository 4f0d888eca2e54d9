import Papa from 'papaparse';
import { BadInput } from './complaint.ts';
import { idOfName } from './id-of-name.ts';
import { type Ink, inkSchema, type Shelf } from './inks.ts';

const COLUMNS = [
  'id',
  'name',
  'L',
  'a',
  'b',
  'hex',
  'opacity',
  'gain',
  'toneGainPercent',
  'curvePercent',
  'note',
] as const;
type Column = (typeof COLUMNS)[number];

const NUMBERS = new Set<Column>(['L', 'a', 'b', 'opacity', 'gain', 'toneGainPercent']);

/** What to write in a column. */
const ADVICE: Record<Column, string> = {
  id: 'use letters, digits, dot, dash and underscore, at most 64',
  name: 'write 1 to 80 characters',
  L: 'write 0 to 150',
  a: 'write -200 to 200',
  b: 'write -200 to 200',
  hex: 'write the colour as #rrggbb',
  opacity: 'write a share from 0, clear, to 1, hiding',
  gain: 'write 0 to 0.5',
  toneGainPercent: 'write -20 to 45',
  curvePercent: 'write film:print in %, the film rising, as in 10:14 50:68',
  note: 'write at most 400 characters',
};

/**
 * The inks of a CSV text: a header row with some of id, name, L, a, b, hex, opacity, gain, toneGainPercent,
 * curvePercent and note, then a row an ink. Comma, semicolon or tab between fields, found from the text; with
 * semicolons numbers may have a decimal comma. Empty rows are left out, an empty field counts as not given.
 *
 * @throws BadInput that names row and column and what to do; the header is row 1
 */
export function inksOfCsv(text: string): Ink[] {
  const { data, errors, meta } = Papa.parse<string[]>(text.replace(/^\uFEFF/, '').trim(), {
    delimitersToGuess: [',', ';', '\t'],
  });
  const broken = errors.find(({ type }) => type === 'Quotes');
  if (broken) throw new BadInput(`row ${(broken.row ?? 0) + 1}: a quote is opened and not closed; close it`);
  const [header = [], ...rows] = data;
  const columns = header.map(columnOf);
  if (!columns.includes('name'))
    throw new BadInput(
      'row 1: there is no column "name"; begin with a row of column names, as id,name,L,a,b',
    );
  return rows.flatMap((fields, i) => {
    if (fields.every((field) => field.trim() === '')) return [];
    if (fields.length > columns.length)
      throw new BadInput(
        `row ${i + 2} has ${fields.length} fields, the header ${columns.length}; put quotes around text that holds a "${meta.delimiter}"`,
      );
    return [
      inkOfRow(new Map(fields.map((field, at) => [columns[at]!, field.trim()])), i + 2, meta.delimiter),
    ];
  });
}

function columnOf(title: string, at: number, header: readonly string[]): Column {
  const plain = (text: string) => text.trim().toLowerCase();
  const column = COLUMNS.find((known) => plain(known) === plain(title));
  if (!column)
    throw new BadInput(
      `row 1: there is no column "${title.trim()}"; known are ${COLUMNS.join(', ')}: rename it or take it out`,
    );
  if (header.findIndex((other) => plain(other) === plain(title)) !== at)
    throw new BadInput(`row 1: the column "${title.trim()}" is there twice; take one out`);
  return column;
}

function inkOfRow(fields: ReadonlyMap<Column, string>, row: number, delimiter: string): Ink {
  const refuse = (column: Column): never => {
    throw new BadInput(
      `row ${row}, column ${column}: "${fields.get(column)}" does not fit; ${ADVICE[column]}`,
    );
  };
  const read = (column: Column): string | number | [number, number][] | undefined => {
    const text = fields.get(column);
    if (!text) return undefined;
    if (column === 'curvePercent') return curveOf(text) ?? refuse(column);
    if (!NUMBERS.has(column)) return text;
    const value = Number(delimiter === ';' ? text.replace(',', '.') : text);
    return Number.isFinite(value) ? value : refuse(column);
  };
  const [l, a, b] = [read('L'), read('a'), read('b')];
  const whole = [l, a, b].filter((value) => value !== undefined).length;
  if (whole === 1 || whole === 2)
    throw new BadInput(`row ${row}: of L, a and b some are missing; give all three, or a hex instead`);
  const name = fields.get('name') ?? '';
  const ink = {
    id: fields.get('id') || idOfName(name),
    name,
    ...(whole === 3 ? { lab: [l, a, b] } : {}),
    ...Object.fromEntries(
      (['hex', 'opacity', 'gain', 'toneGainPercent', 'curvePercent', 'note'] as const)
        .map((column) => [column, read(column)] as const)
        .filter(([, value]) => value !== undefined),
    ),
  };
  const result = inkSchema.safeParse(ink);
  if (result.success) return result.data;
  const { path, message } = result.error.issues[0]!;
  if (path[0] === 'lab') return refuse((['L', 'a', 'b'] as const)[path[1] as number]!);
  if (path[0] === undefined) throw new BadInput(`row ${row}: ${message}`);
  return refuse(path[0] as Column);
}

function curveOf(text: string): [number, number][] | null {
  const points = text.split(/\s+/).map((point) => point.split(':').map(Number));
  const fit = points.every((point) => point.length === 2 && point.every(Number.isFinite));
  return fit ? (points as [number, number][]) : null;
}

/** The inks of a shelf as CSV that `inksOfCsv` reads back; the paper of the shelf is not in it. */
export function shelfCsv({ inks }: Shelf): string {
  const rows = inks.map((ink) => [
    ink.id,
    ink.name,
    ...(ink.lab ?? ['', '', '']),
    ink.hex ?? '',
    ink.opacity,
    ink.gain ?? '',
    ink.toneGainPercent ?? '',
    ink.curvePercent?.map((point) => point.join(':')).join(' ') ?? '',
    ink.note ?? '',
  ]);
  return `${Papa.unparse([[...COLUMNS], ...rows])}\r\n`;
}
