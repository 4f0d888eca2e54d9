import { clientPicture } from './client-picture.ts';
import { lineReport } from './line-report.ts';
import { overview } from './overview.ts';
import { picture } from './picture.ts';
import { regionMap } from './region-map.ts';
import { regions } from './regions.ts';
import { render } from './render.ts';
import { specks } from './specks.ts';
import { zip } from './zip.ts';

/** Long work that is not a node, by name: progress and cancel as for nodes. */
export const tasks = {
  clientPicture,
  lineReport,
  overview,
  picture,
  regionMap,
  regions,
  render,
  specks,
  zip,
};

export type TaskName = keyof typeof tasks;
export type TaskInput<Name extends TaskName> = Parameters<(typeof tasks)[Name]>[0];
export type TaskResult<Name extends TaskName> = Awaited<ReturnType<(typeof tasks)[Name]>>;
