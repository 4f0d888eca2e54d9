import { BadInput } from '../../src/graph/complaint.ts';
import type { Job } from '../../src/graph/job.ts';
import type { Survey } from '../../src/graph/survey.ts';
import type { Cleaning } from '../engine/cleaning.ts';
import type { DrawingValue, RegionsValue } from '../engine/values.ts';
import { firstOf } from './job-ends.ts';
import { lineWidths } from './line-widths.ts';
import { drawingOf, mm3 } from './report-parts.ts';
import { specksOf } from './specks.ts';
import type { TaskContext } from './task.ts';

export interface LineReportInput {
  job: Job;
}

export type LineReport = Survey;

/**
 * What an import of a drawing found: the widths of its lines, what was cleaned and how, which openings are closed.
 *
 * @throws BadInput when the job has no Clean line node
 */
export async function lineReport({ job }: LineReportInput, context: TaskContext): Promise<LineReport> {
  const { engine, flag, onProgress } = context;
  const node = firstOf(job, 'clean-line');
  if (!node) throw new BadInput('the job has no Clean line node');
  const targets = [{ node, port: 'drawing' }];
  const regions = job.graph.nodes.find(({ kind, bypassed }) => kind === 'closed-regions' && !bypassed);
  if (regions) targets.push({ node: regions.id, port: 'regions' });
  const run = await engine.evaluate({ job, targets, scale: 1 }, flag, onProgress);
  const { tools, tidy } = engine.toolBox(flag);
  try {
    const drawing = run.values[0] as DrawingValue;
    const mean = await tools.whole('mean', { data: drawing.line.data });
    return {
      version: 1,
      drawing: drawingOf(drawing),
      line: { coveragePercent: mm3((mean * 100) / 255), widthsMm: await lineWidths(drawing, tools) },
      cleaning: drawing.cleaning ? cleaningOf(drawing.cleaning) : null,
      openings: regions ? openingsOf(run.values[1] as RegionsValue) : null,
      complaints: run.complaints,
    };
  } finally {
    tidy();
    run.release();
  }
}

function cleaningOf(cleaning: Cleaning): NonNullable<Survey['cleaning']> {
  const { light, threshold, turnedDeg, specks, pinholes } = cleaning;
  return {
    light: { evened: light.evened, spreadPercent: mm3(100 * light.spread) },
    threshold: { how: threshold.how, levelPercent: mm3(threshold.levelPercent) },
    turnedDeg,
    specks: specksOf(specks),
    pinholes: { count: pinholes.count, areaMm2: mm3(pinholes.areaMm2) },
  };
}

function openingsOf({ walls, openGaps }: RegionsValue): NonNullable<Survey['openings']> {
  const opening = ({ widthMm, placeMm: [x, y] }: { widthMm: number; placeMm: [number, number] }) => ({
    widthMm: mm3(widthMm),
    placeMm: [mm3(x), mm3(y)] as [number, number],
  });
  return { closed: walls.filter(({ opened }) => !opened).map(opening), open: openGaps.map(opening) };
}
