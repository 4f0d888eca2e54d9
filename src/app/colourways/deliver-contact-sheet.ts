import { Cancelled, type Client } from '../../../workers/client.ts';
import type { Job } from '../../graph/job.ts';
import { download } from '../files/browser-files.ts';
import { say, sayBriefly, setFiles } from '../files/files-store.ts';
import { colourwayTexts } from './strings.ts';

const texts = colourwayTexts.compare;

/** Prints all colourways small on one sheet and hands it over as PNG. */
export async function deliverContactSheet(client: Client, job: Job): Promise<void> {
  const stop = new AbortController();
  setFiles({ busy: { text: texts.making, cancel: () => stop.abort() } });
  try {
    const { files } = await client.run('contactSheet', { job }, { signal: stop.signal });
    download(texts.contactFile, new Uint8Array(files[0]!.bytes), 'image/png');
    sayBriefly(texts.made(texts.contactFile));
  } catch (error) {
    if (!(error instanceof Cancelled)) say((error as Error).message);
  } finally {
    setFiles({ busy: null });
  }
}
