import { BadInput } from '../../src/graph/complaint.ts';
import { canonicalJson } from '../../src/graph/keys.ts';
import { type PrintModel, printModel } from '../../src/ink/model.ts';
import type { PrintInput } from '../../src/ink/model-input.ts';
import { type ProofTable, proofTable } from '../../src/ink/proof-table.ts';
import { decodeSrgb, encodeSrgb, linearOfXyz } from '../../src/ink/srgb.ts';
import { proof as kind } from '../../src/nodes/proof.ts';
import { evaluation } from '../engine/evaluation.ts';
import { onTooth, shownThrough, textureOf, torn } from './lay-paper.ts';
import { printInput } from './print-input.ts';
import { TEXTURE_DEPTH } from './texture-depth.ts';

/** Up to this many plates all colours fit a table. */
const MOST_IN_TABLE = 5;
/** Fine enough that neighbouring steps never differ by more than one screen byte. */
const LIGHT_STEPS = 4096;

const ENCODING = Uint8Array.from({ length: LIGHT_STEPS }, (_, i) =>
  Math.round(255 * encodeSrgb(i / (LIGHT_STEPS - 1))),
);

const LIGHT = Float64Array.from({ length: 256 }, (_, byte) => decodeSrgb(byte / 255));

/** The linear map of `linearOfXyz`, row by row. */
const TO_SCREEN = [0, 1, 2].flatMap((row) => {
  const columns = [linearOfXyz([1, 0, 0]), linearOfXyz([0, 1, 0]), linearOfXyz([0, 0, 1])];
  return columns.map((column) => column[row]!);
});

export const proof = evaluation(kind, async ({ inputs, tools }) => {
  const { plates, paper } = inputs;
  const first = plates.plates[0];
  if (!first) throw new BadInput('there is no plate to proof');
  const { width, height } = first.coverage;
  const texture = await textureOf(paper, plates, tools);
  const print = printInput(plates, paper.stock);
  const pixels = tools.bytes(width * height * 3);
  const paint = {
    plates: await onTooth(paper, plates, texture, tools),
    texture,
    depth: TEXTURE_DEPTH,
    toScreen: TO_SCREEN,
    encoding: ENCODING,
    out: pixels,
  };
  const model = printModel(print);
  for (const note of model.notes)
    tools.complain({ code: `colour-${note.code}`, severity: 'note', message: note.message });
  if (plates.plates.length > MOST_IN_TABLE) await tools.bands('proofMany', { ...paint, print }, height);
  else {
    const { size, data } = tableOf(print, model);
    await tools.bands('proof', { ...paint, size, table: data }, height);
  }
  const through = await shownThrough(
    paper,
    first.coverage,
    pixels,
    { light: LIGHT, encoding: ENCODING },
    tools,
  );
  const shown = await torn(paper, first.coverage, plates.ppi, through, tools);
  return { proof: { type: 'proof', width, height, pixels: shown, ppi: plates.ppi, mm: plates.mm } };
});

/** Tables of the last prints: another tint changes no ink, and a table is worth about 40 ms. */
const tables = new Map<string, ProofTable>();
const MOST_TABLES = 4;

function tableOf(print: PrintInput, model: PrintModel): ProofTable {
  const key = canonicalJson(print);
  const known = tables.get(key);
  if (known) return known;
  if (tables.size >= MOST_TABLES) tables.delete(tables.keys().next().value!);
  const table = proofTable(model);
  tables.set(key, table);
  return table;
}
