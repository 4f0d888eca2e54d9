import { BadInput } from '../../src/graph/complaint.ts';
import type { Job } from '../../src/graph/job.ts';
import { assignIds, type RegionRegister } from '../../src/graph/register.ts';
import type { RegionsFile } from '../../src/graph/report.ts';
import type { RegionsValue } from '../engine/values.ts';
import { firstOf } from './job-ends.ts';
import { drawingOf, mm3 } from './report-parts.ts';
import type { MadeFile, TaskContext } from './task.ts';

export interface RegionsInput {
  job: Job;
}

export interface RegionsFound {
  files: MadeFile[];
  found: RegionsFile;
  /** What the job should remember, so that these regions keep their ids. */
  register: RegionRegister;
}

/**
 * The label picture and the table of a drawing's regions.
 *
 * @throws BadInput when the job has no Closed regions node
 */
export async function regions(input: RegionsInput, context: TaskContext): Promise<RegionsFound> {
  const { engine, flag, onProgress } = context;
  const node = firstOf(input.job, 'closed-regions');
  if (!node) throw new BadInput('the job has no Closed regions node');
  const targets = [{ node, port: 'regions' }];
  const run = await engine.evaluate({ job: input.job, targets, scale: 1 }, flag, onProgress);
  const { tools, tidy } = engine.toolBox(flag);
  try {
    const value = run.values[0] as RegionsValue;
    const { width, height, data } = value.labels;
    const count = value.table.length;
    const bytes = await tools.whole('encodeLabelsPng', {
      labels: data,
      width,
      height,
      ppi: value.ppi,
      count,
    });
    return {
      files: [{ name: 'labels.png', bytes }],
      found: { ...tableOf(value), complaints: run.complaints },
      register: assignIds(value.table, input.job.register).register,
    };
  } finally {
    tidy();
    run.release();
  }
}

function tableOf(value: RegionsValue): Omit<RegionsFile, 'complaints'> {
  const point = (place: readonly [number, number]): [number, number] => [mm3(place[0]), mm3(place[1])];
  const idOf = (label: number) => value.ids[label - 1]!;
  return {
    version: 1,
    drawing: drawingOf(value),
    regions: value.table.map((region) => ({
      id: idOf(region.label),
      label: region.label,
      areaMm2: mm3(region.areaMm2),
      anchorMm: point(region.anchorMm),
      boxMm: region.boxMm.map(mm3) as typeof region.boxMm,
      touchesFrame: region.touchesFrame,
      neighbours: region.neighbours.map(({ label, sharedMm }) => ({
        id: idOf(label),
        sharedMm: mm3(sharedMm),
      })),
      inside: region.inside === null ? null : idOf(region.inside),
    })),
    walls: value.walls.map((wall, i) => ({
      id: `w${i + 1}`,
      widthMm: mm3(wall.widthMm),
      placeMm: point(wall.placeMm),
      between: [idOf(wall.between[0]), idOf(wall.between[1])],
    })),
    openGaps: value.openGaps.map((gap) => ({ widthMm: mm3(gap.widthMm), placeMm: point(gap.placeMm) })),
  };
}
