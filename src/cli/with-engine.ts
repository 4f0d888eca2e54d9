import { type Client, type OnProgress, startEngine, type TaskOptions } from '../../workers/client.ts';

/** Most commands evaluate everything once, so that finished steps are not kept. */
const NOTHING_TWICE = 0;

/**
 * Runs some work with an engine: progress on a terminal's stderr, cancelled by Ctrl-C, closed at the end.
 *
 * @param budgetBytes what finished steps may take up, for work that comes back to them
 */
export async function withEngine<Result>(
  workers: number | undefined,
  work: (client: Client, options: TaskOptions) => Promise<Result>,
  budgetBytes: number = NOTHING_TWICE,
): Promise<Result> {
  const client = await startEngine({
    ...(workers === undefined ? {} : { workers }),
    budgetBytes,
  });
  const stop = new AbortController();
  const interrupted = () => stop.abort();
  process.once('SIGINT', interrupted);
  try {
    return await work(client, { onProgress: onTerminal, signal: stop.signal });
  } finally {
    process.off('SIGINT', interrupted);
    if (process.stderr.isTTY) process.stderr.write('\r\x1b[K');
    await client.close();
  }
}

const onTerminal: OnProgress = ({ node, done, of }) => {
  if (process.stderr.isTTY) process.stderr.write(`\r\x1b[K${done + 1}/${of} ${node}`);
};
