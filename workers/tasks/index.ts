import { clientPicture } from './client-picture.ts';
import { contactFiles } from './contact-files.ts';
import { contactSheet } from './contact-sheet.ts';
import { edition } from './edition.ts';
import { ghost } from './ghost.ts';
import { inkSets } from './ink-sets.ts';
import { lineReport } from './line-report.ts';
import { match } from './match.ts';
import { overview } from './overview.ts';
import { picture } from './picture.ts';
import { pressCheck } from './press/press-check.ts';
import { pressForm } from './press-form.ts';
import { propose } from './propose.ts';
import { redraw } from './redraw.ts';
import { regionMap } from './region-map.ts';
import { regions } from './regions.ts';
import { registerSlack } from './register-slack.ts';
import { render } from './render.ts';
import { specks } from './specks.ts';
import { spots } from './spots.ts';
import { styleRecipes } from './style-recipes.ts';
import { swapInks } from './swap-inks.ts';
import { trapReport } from './trap-report.ts';
import { zip } from './zip.ts';

/** Long work that is not a node, by name: progress and cancel as for nodes. */
export const tasks = {
  clientPicture,
  contactFiles,
  contactSheet,
  ghost,
  edition,
  inkSets,
  lineReport,
  match,
  overview,
  picture,
  pressCheck,
  pressForm,
  propose,
  redraw,
  registerSlack,
  regionMap,
  regions,
  render,
  specks,
  spots,
  styleRecipes,
  swapInks,
  trapReport,
  zip,
};

export type TaskName = keyof typeof tasks;
export type TaskInput<Name extends TaskName> = Parameters<(typeof tasks)[Name]>[0];
export type TaskResult<Name extends TaskName> = Awaited<ReturnType<(typeof tasks)[Name]>>;
