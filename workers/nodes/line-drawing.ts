import { BadInput } from '../../src/graph/complaint.ts';
import { lineDrawing as kind } from '../../src/nodes/line-drawing.ts';
import { evaluation } from '../engine/evaluation.ts';
import { physicalSize } from '../files/physical-size.ts';
import type { Reading } from '../kernels/coverage.ts';
import { mmToPx } from '../kernels/plane.ts';
import type { Survey } from '../kernels/survey-line.ts';
import { openAsset } from './open-picture.ts';

/** A picture whose strongest mark stays below this coverage is an empty sheet. */
const LEAST_MARK = 24;
const LEAST_PX = 16;
/** A colour broader than this beside black line is a wash. */
const BROAD_MM = 1;
/** Usual resolution at which line art goes on film and masters (common practice, no source). */
const VECTOR_PPI = 600;

export const lineDrawing = evaluation(kind, async ({ settings, tools }) => {
  if (!settings.asset) throw new BadInput('Line drawing has no file yet; choose a picture of the lines');
  const options = { vectorPpi: settings.ppi ?? VECTOR_PPI, widthMm: settings.widthMm ?? undefined };
  const { name, head, pixels } = await openAsset(settings.asset, options, tools);
  const { width, height, bands } = head;
  if (width < LEAST_PX || height < LEAST_PX)
    throw new BadInput(
      `${name}: only ${width} x ${height} px; a drawing needs at least ${LEAST_PX} px each way`,
    );
  for (const message of head.notes)
    tools.complain({ code: 'picture-note', severity: 'note', message: `${name}: ${message}` });
  const { ppi, complaints } = physicalSize(head, { ...settings, vectorPpi: options.vectorPpi }, name);
  complaints.forEach(tools.complain);

  const broad = Math.max(2, Math.round(mmToPx(BROAD_MM / 2, ppi)));
  const survey = await tools.whole('surveyLine', { pixels, bands, width, broad });
  const line = tools.plane(width, height);
  const reading = readingFor(settings.channel, survey);
  if (settings.channel === 'auto' && survey.beside)
    tools.complain({
      code: 'coloured-line',
      severity: 'note',
      message: `${name}: lines of colour stand beside black ones and count in full; to leave a pencil sketch out, read line from darkness.`,
    });
  await tools.bands('coverage', { pixels, bands, reading, line }, height);
  const counts = await tools.whole('histogram', { data: line.data });
  if (!counts.some((count, value) => count > 0 && value >= LEAST_MARK))
    throw new BadInput(
      `${name}: no line in it: nothing is darker than the paper; check that it is the right file`,
    );
  const mm = [(width * 25.4) / ppi, (height * 25.4) / ppi] as const;
  return { drawing: { type: 'drawing', line, ppi, mm, artAt: settings.artAt } };
});

/** As the survey found it; where a person chose colour, every hue counts. */
function readingFor(channel: Survey['channel'] | 'auto', survey: Survey): Reading {
  if (channel === 'auto') return survey;
  if (channel !== 'colour') return { ...survey, channel };
  return { ...survey, channel, full: survey.full.map((value) => value || 255) };
}
