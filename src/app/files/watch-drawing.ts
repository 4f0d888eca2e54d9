import { ask, filesStore, setFiles } from './files-store.ts';
import { receive } from './receive.ts';

/** Looks, whenever the person comes back to the window, whether the drawing's file was changed. Returns what ends it. */
export function watchDrawing(): () => void {
  const look = () => void offerChange();
  window.addEventListener('focus', look);
  return () => window.removeEventListener('focus', look);
}

async function offerChange(): Promise<void> {
  const { drawing, question } = filesStore.getState();
  if (!drawing || question) return;
  const file = await drawing.handle.getFile().catch(() => null);
  if (!file || file.lastModified === drawing.changed) return;
  setFiles({ drawing: { ...drawing, changed: file.lastModified } });
  if (await ask('changed', { file: file.name })) await receive([{ file, handle: drawing.handle }], 'changed');
}
