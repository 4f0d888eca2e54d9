import { basename } from 'node:path';
import type { Survey } from '../graph/survey.ts';
import { readArguments } from './arguments.ts';
import { drawingJob, SIZE_OPTIONS } from './drawing-job.ts';
import { codeOf } from './outcome.ts';
import { withEngine } from './with-engine.ts';

export const SURVEY_USAGE =
  'keyblock survey DRAWING [--width MM] [--ppi N] [--speck MM2] [--gap MM] [--json]';

const text = { type: 'string' } as const;
const OPTIONS = {
  ...SIZE_OPTIONS,
  speck: text,
  gap: text,
  json: { type: 'boolean', default: false },
} as const;

/** What an import of a drawing finds: line widths, specks, light, threshold, openings. Resolves to the exit code. */
export async function survey(args: string[], about: (file: string) => void): Promise<number> {
  const { values, files } = readArguments(args, OPTIONS, 1, SURVEY_USAGE);
  const path = files[0]!;
  about(path);
  const { job, bytes } = await drawingJob(path, values);
  const found = await withEngine(undefined, async (client, options) => {
    await client.addAsset({ name: basename(path), bytes });
    return client.run('lineReport', { job }, options);
  });
  process.stdout.write(values.json ? `${JSON.stringify(found)}\n` : `${linesOf(found).join('\n')}\n`);
  return codeOf(found.complaints);
}

const RULES = {
  half: 'half coverage, as for clean artwork',
  'whole-drawing': 'found from the whole drawing',
  local: 'found from the paper around each spot',
  set: 'as set',
} as const;

function linesOf(found: Survey): string[] {
  const { drawing, line, cleaning, openings } = found;
  const { widthsMm } = line;
  const lines = [
    `size       ${drawing.width} x ${drawing.height} px at ${drawing.ppi} ppi, ${drawing.mm.join(' x ')} mm`,
    `line       ${line.coveragePercent} % of the sheet`,
    widthsMm
      ? `widths     ${widthsMm.middle} mm; from ${widthsMm.low} to ${widthsMm.high}; thinnest ${widthsMm.thinnest}`
      : 'widths     no line to measure',
  ];
  if (cleaning) {
    const { threshold, light, turnedDeg, specks, pinholes } = cleaning;
    lines.push(
      `threshold  ${RULES[threshold.how]} (${threshold.levelPercent} %)`,
      `light      ${light.evened ? 'evened out' : 'left as it is'}; paper differs by ${light.spreadPercent} %`,
      `turned     ${turnedDeg} degrees`,
      `specks     ${specks.count} went, ${specks.areaMm2} mm2`,
      `pinholes   ${pinholes.count} filled, ${pinholes.areaMm2} mm2`,
    );
  }
  if (openings)
    lines.push(`openings   ${openings.closed.length} closed, ${openings.open.length} wider than the gap`);
  return [...lines, ...found.complaints.map(({ severity, message }) => `${severity}: ${message}`)];
}
