import type { ComponentType } from 'react';
import type { Client } from '../../workers/client.ts';
import { Docket } from '../docket/Docket.tsx';
import { redo, undo } from '../store/job-store.ts';
import { resultsStore } from '../store/results-store.ts';
import type { SheetName } from '../store/view-store.ts';
import { recipeShortcuts } from '../view/recipe-shortcuts.ts';
import { toolShortcuts } from '../view/tools.ts';
import { zoomShortcuts } from '../view/zoom-shortcuts.ts';
import { Wiring } from '../wiring/Wiring.tsx';
import { Chart } from './chart/Chart.tsx';
import { Compare } from './colourways/Compare.tsx';
import { Proposals } from './colourways/Proposals.tsx';
import { Edition } from './edition/Edition.tsx';
import { fileShortcuts } from './files/file-shortcuts.ts';
import { Inks } from './inks/Inks.tsx';
import { Colourways } from './panels/Colourways.tsx';
import { Plates } from './panels/Plates.tsx';
import { PressCheck } from './panels/press/PressCheck.tsx';
import { Recipes } from './panels/Recipes.tsx';
import { Redraw } from './panels/redraw/Redraw.tsx';
import { Regions } from './panels/regions/Regions.tsx';
import { Rough } from './panels/rough/Rough.tsx';
import { Slack } from './panels/slack/Slack.tsx';
import type { Panel, Shortcut, View } from './registry.ts';
import { strings } from './strings.ts';

export const panels: readonly Panel[] = [
  { id: 'plates', title: 'Plates', column: 'left', Component: Plates },
  { id: 'redraw', title: 'Redraw', column: 'left', Component: Redraw },
  { id: 'regions', title: 'Regions', column: 'left', Component: Regions },
  { id: 'rough', title: 'Rough', column: 'left', Component: Rough },
  { id: 'press', title: 'Press check', column: 'left', Component: PressCheck },
  { id: 'slack', title: 'Register slack', column: 'left', Component: Slack },
  { id: 'recipes', title: 'Recipes', column: 'left', Component: Recipes },
  { id: 'wiring', title: 'Wiring', column: 'right', Component: Wiring },
  { id: 'docket', title: 'Docket', column: 'right', Component: Docket },
  { id: 'colourways', title: 'Colourways', column: 'strip', Component: Colourways },
];

/** What lies over the print when it is asked for. */
export const sheets: Readonly<Record<SheetName, ComponentType<{ client: Client }>>> = {
  chart: Chart,
  inks: Inks,
  proposals: Proposals,
  compare: Compare,
  edition: Edition,
};

export const views: readonly View[] = [
  { id: 'proof', title: strings.views.proof, show: () => ({ view: 'proof' }) },
  {
    id: 'plate',
    title: strings.views.plate,
    show: () => {
      const plate = resultsStore.getState().overview?.plates[0];
      return plate ? { view: 'plate', plate: plate.id } : null;
    },
  },
  { id: 'regions', title: strings.views.regions, show: () => ({ view: 'regions' }) },
  { id: 'slack', title: strings.views.slack, show: () => ({ view: 'slack' }) },
];

export const shortcuts: readonly Shortcut[] = [
  { keys: 'Mod+z', name: strings.app.undo, run: undo },
  { keys: 'Mod+Shift+z', name: strings.app.redo, run: redo },
  ...fileShortcuts,
  ...recipeShortcuts,
  ...toolShortcuts,
  ...zoomShortcuts,
];
