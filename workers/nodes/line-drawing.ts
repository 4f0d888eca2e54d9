import { BadInput } from '../../src/graph/complaint.ts';
import { lineDrawing as kind } from '../../src/nodes/line-drawing.ts';
import { evaluation } from '../engine/evaluation.ts';
import { physicalSize } from '../files/physical-size.ts';
import type { Survey } from '../kernels/survey-line.ts';

/** No sound picture takes longer to open than this. */
const LIMIT_MS = 60_000;
/** A picture whose strongest mark stays below this coverage is an empty sheet. */
const LEAST_MARK = 24;
const LEAST_PX = 16;
/** Usual resolution at which line art goes on film and masters (common practice, no source). */
const VECTOR_PPI = 600;

export const lineDrawing = evaluation(kind, async ({ settings, tools }) => {
  if (!settings.asset) throw new BadInput('Line drawing has no file yet; choose a picture of the lines');
  const { name, bytes } = tools.asset(settings.asset);
  const options = { vectorPpi: settings.ppi ?? VECTOR_PPI, widthMm: settings.widthMm ?? undefined };
  const { head, pixels } = await tools.alone('openPicture', { bytes, name, options }, LIMIT_MS);
  tools.adopt(pixels.buffer);
  const { width, height, bands } = head;
  if (width < LEAST_PX || height < LEAST_PX)
    throw new BadInput(
      `${name}: only ${width} x ${height} px; a drawing needs at least ${LEAST_PX} px each way`,
    );
  for (const message of head.notes)
    tools.complain({ code: 'picture-note', severity: 'note', message: `${name}: ${message}` });
  const { ppi, complaints } = physicalSize(head, { ...settings, vectorPpi: options.vectorPpi }, name);
  complaints.forEach(tools.complain);

  const survey = await tools.whole('surveyLine', { pixels, bands });
  const channel = settings.channel === 'auto' ? survey.channel : settings.channel;
  const line = tools.plane(width, height);
  await tools.bands('coverage', { pixels, bands, channel, table: gain(survey, channel), line }, height);
  const counts = await tools.whole('histogram', { data: line.data });
  if (!counts.some((count, value) => count > 0 && value >= LEAST_MARK))
    throw new BadInput(
      `${name}: no line in it: nothing is darker than the paper; check that it is the right file`,
    );
  const mm = [(width * 25.4) / ppi, (height * 25.4) / ppi] as const;
  return { drawing: { type: 'drawing', line, ppi, mm, artAt: settings.artAt } };
});

/** Raises the strength of a one-hue line to full; leaves any other as it is. */
function gain(survey: Survey, channel: string): Uint8Array {
  const full = channel === 'colour' ? survey.full : 255;
  return Uint8Array.from({ length: 256 }, (_, v) => Math.min(255, Math.round((v * 255) / full)));
}
