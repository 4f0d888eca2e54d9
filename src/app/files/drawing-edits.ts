import { assetsInUse, freshFileName, partsOf, plainFileName } from '../../graph/assets.ts';
import { BadInput } from '../../graph/complaint.ts';
import { defaultGraph, newJob } from '../../graph/default-graph.ts';
import type { GraphNode, Job } from '../../graph/job.ts';
import { withNode, withSetting } from '../../store/edits.ts';
import { STARTER_INKS } from './starter-inks.ts';

const LONGEST_TITLE = 120;

/** The look-first job of a drawing: three inks, every region still bare. */
export function jobOfDrawing(fileName: string, hash: string): Job {
  const file = plainFileName(fileName);
  const name = partsOf(file).stem.replace(/[-_]+/g, ' ').trim().slice(0, LONGEST_TITLE);
  return newJob(name === '' ? file : name, defaultGraph({ asset: hash }, STARTER_INKS), { [hash]: { file } });
}

/** The first Line drawing. @throws BadInput when the job has none */
export function drawingNode(job: Job): GraphNode {
  const node = job.graph.nodes.find(({ kind }) => kind === 'line-drawing');
  if (!node) throw new BadInput('the job has no Line drawing node to give the drawing to');
  return node;
}

/**
 * The job with another drawing in its first Line drawing; the printed width that was set stays, and so do the regions
 * it remembers, so that those found again keep their ids.
 */
export function withDrawing(job: Job, fileName: string, hash: string): Job {
  const { id } = drawingNode(job);
  const changed = withNode(job, id, (node) => {
    const { ppi: _, ...settings } = node.settings;
    return { ...node, settings: { ...settings, asset: hash } };
  });
  const used = new Set(assetsInUse(changed));
  const others = Object.entries(job.assets).filter(([other]) => used.has(other) && other !== hash);
  const file = freshFileName(
    plainFileName(fileName),
    others.map(([, asset]) => asset.file),
  );
  return { ...changed, assets: { ...Object.fromEntries(others), [hash]: { file } } };
}

/** The job with its drawing printed so wide, mm. */
export function withWidth(job: Job, widthMm: number): Job {
  return withSetting(
    withSetting(job, drawingNode(job).id, 'ppi', undefined),
    drawingNode(job).id,
    'widthMm',
    widthMm,
  );
}
