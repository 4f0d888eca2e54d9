import { useEffect, useState } from 'react';
import type { Chosen } from './browser-files.ts';
import { receive } from './receive.ts';

const holdsFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false;

/** Takes files that are dropped anywhere on the window; true while some are held over it. */
export function useDrop(): boolean {
  const [over, setOver] = useState(false);
  useEffect(() => {
    const drag = (event: DragEvent) => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      event.dataTransfer!.dropEffect = 'copy';
      setOver(true);
    };
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent) => {
      setOver(false);
      if (!holdsFiles(event)) return;
      event.preventDefault();
      void chosenOf(event.dataTransfer!).then((chosen) => receive(chosen, 'dropped'));
    };
    window.addEventListener('dragenter', drag);
    window.addEventListener('dragover', drag);
    window.addEventListener('dragleave', leave);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragenter', drag);
      window.removeEventListener('dragover', drag);
      window.removeEventListener('dragleave', leave);
      window.removeEventListener('drop', drop);
    };
  }, []);
  return over;
}

/** What was dropped, with handles where the browser gives them. All must be asked for before the event ends. */
function chosenOf(data: DataTransfer): Promise<Chosen[]> {
  const items = [...data.items].filter(({ kind }) => kind === 'file');
  const held = items.map((item) => ({
    file: item.getAsFile(),
    handle: item.getAsFileSystemHandle?.().catch(() => null) ?? null,
  }));
  const found = held.flatMap(({ file, handle }) => (file ? [{ file, handle }] : []));
  return Promise.all(
    found.map(async ({ file, handle }) => {
      const known = await handle;
      return { file, handle: known?.kind === 'file' ? (known as FileSystemFileHandle) : null };
    }),
  );
}
