import type { Client } from '../../../workers/client.ts';
import type { Job } from '../../graph/job.ts';
import { drawingNode } from './drawing-edits.ts';

/** Regions are looked at in small; it is the sheet's size that is wanted. */
const SCALE = 4;

export interface Measured {
  /** Printed size as the file says, or as it is assumed. */
  mm: [number, number];
  /** Whether the file says nothing of its size. */
  assumed: boolean;
  /** Pixels of the picture at the assumed size. */
  pixels: [number, number];
}

/** How large a job's drawing prints. @throws an error with a line for the person when it cannot be used; Cancelled */
export async function measureDrawing(client: Client, job: Job, signal: AbortSignal): Promise<Measured> {
  const { mm, ppi, complaints } = await client.run('regionMap', { job, scale: SCALE }, { signal });
  const pixelsOf = (side: number) => Math.round((side * ppi * SCALE) / 25.4);
  return {
    mm,
    assumed: complaints.some(({ code }) => code === 'size-assumed'),
    pixels: [pixelsOf(mm[0]), pixelsOf(mm[1])],
  };
}

/** Whether a job's drawing is drawn out from lines and has no pixels of its own. */
export function isVector(job: Job): boolean {
  const hash = drawingNode(job).settings.asset;
  const file = typeof hash === 'string' ? job.assets[hash]?.file : undefined;
  return file?.toLowerCase().endsWith('.svg') ?? false;
}
