import { files as texts } from './strings.ts';

/** Endings and media types of what can be chosen. */
const JOBS = { 'application/x-keyblock': ['.keyblock'], 'application/json': ['.json'] };
const PICTURES = { 'image/*': ['.png', '.jpg', '.jpeg', '.webp', '.tif', '.tiff', '.svg'] };

/** A chosen file, with a handle where the browser can write to it again. */
export interface Chosen {
  file: File;
  handle: FileSystemFileHandle | null;
}

/** Lets the person choose files; none when they let it be. */
export async function chooseFiles(what: 'job' | 'drawing'): Promise<Chosen[]> {
  const accept = what === 'job' ? { ...JOBS, ...PICTURES } : PICTURES;
  if (!window.showOpenFilePicker) return chooseByInput(Object.values(accept).flat(), what === 'job');
  const types = [{ description: what === 'job' ? texts.jobFiles : texts.pictures, accept }];
  const handles = await unlessLetBe(window.showOpenFilePicker({ multiple: what === 'job', types }));
  return Promise.all((handles ?? []).map(async (handle) => ({ file: await handle.getFile(), handle })));
}

function chooseByInput(endings: readonly string[], multiple: boolean): Promise<Chosen[]> {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = endings.join(',');
  input.multiple = multiple;
  return new Promise((resolve) => {
    input.addEventListener('change', () =>
      resolve([...(input.files ?? [])].map((file) => ({ file, handle: null }))),
    );
    input.addEventListener('cancel', () => resolve([]));
    input.click();
  });
}

/** Asks where a job file goes; null when the person let it be, undefined where the browser cannot ask. */
export async function chooseSaveHandle(
  suggestedName: string,
): Promise<FileSystemFileHandle | null | undefined> {
  if (!window.showSaveFilePicker) return undefined;
  const types = [{ description: texts.jobFiles, accept: { 'application/x-keyblock': ['.keyblock'] } }];
  return unlessLetBe(window.showSaveFilePicker({ suggestedName, types }));
}

/** Writes a file that was chosen before. @throws when it may not be written any more */
export async function writeTo(handle: FileSystemFileHandle, bytes: Uint8Array<ArrayBuffer>): Promise<void> {
  const asked = await handle.requestPermission?.({ mode: 'readwrite' });
  if (asked !== undefined && asked !== 'granted') throw new Error(texts.mayNotWrite(handle.name));
  const stream = await handle.createWritable();
  await stream.write(bytes);
  await stream.close();
}

/** Hands a file over as a download. */
export function download(name: string, bytes: Uint8Array<ArrayBuffer>, type: string): void {
  const url = URL.createObjectURL(new Blob([bytes], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** Null when the person closed the dialog of the browser. */
async function unlessLetBe<Result>(asked: Promise<Result>): Promise<Result | null> {
  try {
    return await asked;
  } catch (error) {
    if ((error as DOMException).name === 'AbortError') return null;
    throw error;
  }
}
