import type { Shortcut } from '../registry.ts';
import { chooseFiles } from './browser-files.ts';
import { receive } from './receive.ts';
import { saveJob, saveJobAs } from './save-job.ts';
import { files as texts } from './strings.ts';

/** Lets the person choose a drawing for a new job. */
export async function chooseDrawing(): Promise<void> {
  await receive(await chooseFiles('drawing'), 'new');
}

/** Lets the person choose a job to open. */
export async function chooseJob(): Promise<void> {
  await receive(await chooseFiles('job'), 'open');
}

export const fileShortcuts: readonly Shortcut[] = [
  { keys: 'Mod+s', name: texts.menu.save, run: () => void saveJob() },
  { keys: 'Mod+Shift+s', name: texts.menu.saveAs, run: () => void saveJobAs() },
  { keys: 'Mod+o', name: texts.menu.open, run: () => void chooseJob() },
];
