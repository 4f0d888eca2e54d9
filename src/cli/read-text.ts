import { BadInput } from '../graph/complaint.ts';
import { readBytes } from './read-job.ts';

/** The text of a file. @throws BadInput when it cannot be read or is no UTF-8 */
export async function readText(path: string): Promise<string> {
  const bytes = await readBytes(path);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new BadInput('this is no text in UTF-8; save it as UTF-8');
  }
}
