import { type Asset, Cancelled, type Client, type TaskOptions } from '../../workers/client.ts';
import type { Job } from '../graph/job.ts';
import { jobStore, remember } from './job-store.ts';
import { mark } from './marks.ts';
import { clearResults, type Results, resultsStore } from './results-store.ts';
import { type Showing, viewStore } from './view-store.ts';

/** Pictures of 1/n each way: while the hand moves, for lists, for the colourway strip, to look regions up in. */
const COARSE = 8;
const LIST = 8;
const STRIP = 16;
const MAP = 4;
/** Most pixels of the fine picture: what every tablet shows without strain. */
const FINE_PIXELS = 6e6;
/** Most pixels of the picture for a close look. */
const CLOSE_PIXELS = 24e6;
/** How long the hand must rest before the fine picture is made, ms. */
const REST_MS = 150;

const publish = (change: Partial<Results>) => resultsStore.setState(change);

/** One run for one state of document and view; a newer one ends it. */
interface Round {
  job: Job;
  showing: Showing;
  options: TaskOptions;
  signal: AbortSignal;
}

/**
 * Keeps the results up to date with document and view, until the returned function is called. Only the newest state
 * is worked for; the last good results stay while it is.
 */
export function startSession(client: Client): () => void {
  let current: AbortController | null = null;
  const known = new Set<string>();

  const restart = async (work: (client: Client, round: Round) => Promise<void>) => {
    current?.abort();
    const { job } = jobStore.getState();
    if (!job) return;
    const mine = new AbortController();
    current = mine;
    const cancel = () => mine.abort();
    publish({ running: { progress: null, cancel }, failure: null });
    /** A report travels by another way than the result and may come after it. */
    const onProgress: TaskOptions['onProgress'] = (progress) => {
      if (current !== mine) return;
      mark('keyblock step', progress.node);
      publish({ running: { progress, cancel } });
    };
    try {
      const unknown = filesBut(known);
      if (unknown.length > 0) await handOver(client, unknown, known);
      const { showing } = viewStore.getState();
      await work(client, { job, showing, options: { onProgress, signal: mine.signal }, signal: mine.signal });
    } catch (error) {
      if (!(error instanceof Cancelled) && current === mine) publish({ failure: (error as Error).message });
    } finally {
      if (current === mine) {
        current = null;
        publish({ running: null });
      }
    }
  };

  const stops = [
    jobStore.subscribe((state, before) => {
      if (state.opened !== before.opened) clearResults();
      else if (onlyRemembered(state.job, before.job)) return;
      void restart(everything);
    }),
    viewStore.subscribe((state, before) => {
      if (state.ghost && !before.ghost) void showGhost(client);
    }),
    viewStore.subscribe((state, before) => {
      if (state.showing !== before.showing) void restart(everything);
      else if (state.closeUp && !before.closeUp && current === null) void restart(closeUp);
    }),
  ];
  void restart(everything);
  return () => {
    for (const stop of stops) stop();
    current?.abort();
  };
}

/** The old lines, made when they are asked for. */
async function showGhost(client: Client): Promise<void> {
  const { job } = jobStore.getState();
  if (!job) return;
  try {
    publish({ ghost: await client.run('ghost', { job, scale: 1 }) });
  } catch (error) {
    publish({ failure: (error as Error).message });
  }
}

/** Whether two documents differ in nothing but the regions they remember. */
function onlyRemembered(after: Job | null, before: Job | null): boolean {
  if (after === before) return true;
  if (!after || !before) return false;
  const keys = Object.keys(after) as (keyof Job)[];
  return keys.every((key) => key === 'register' || after[key] === before[key]);
}

/** The document's files that the engine does not know yet. */
function filesBut(known: ReadonlySet<string>): [string, Asset][] {
  return [...jobStore.getState().files].filter(([hash]) => !known.has(hash));
}

/** Gives the engine files. */
async function handOver(client: Client, files: [string, Asset][], known: Set<string>): Promise<void> {
  for (const [hash, asset] of files) {
    await client.addAsset(asset);
    known.add(hash);
  }
}

/** Coarse picture, map of the regions, lists; the fine picture once the hand rests; the strip last. */
async function everything(client: Client, round: Round): Promise<void> {
  const { job, showing, options, signal } = round;
  const started = performance.now();
  publish({ picture: await client.run('picture', { job, show: showing, scale: COARSE }, options) });
  await mapRegions(client, round);
  publish({ overview: await client.run('overview', { job, scale: LIST }, options) });
  await handRests(signal);
  await fine(client, round, FINE_PIXELS);
  const { liveBytes } = await client.memory();
  publish({ seconds: (performance.now() - started) / 1000, liveBytes });
  await strip(client, round);
  if (viewStore.getState().closeUp) await closeUp(client, round);
}

/** The map is made again only where the wiring changed: another recipe moves no region. */
async function mapRegions(client: Client, { job, options }: Round): Promise<void> {
  const { regions, mappedFor } = resultsStore.getState();
  if (regions && mappedFor === job.graph) return;
  const found = await client.run('regionMap', { job, scale: MAP }, options);
  publish({ regions: found, mappedFor: job.graph });
  remember(found.register);
}

/** The picture as fine as `most` pixels allow. */
async function fine(client: Client, { job, showing, options }: Round, most: number): Promise<void> {
  const { regions } = resultsStore.getState();
  const pixels = regions ? regions.width * regions.height * MAP * MAP : 0;
  const scale = Math.max(1, Math.ceil(Math.sqrt(pixels / most)));
  if (resultsStore.getState().picture?.scale === scale && most === CLOSE_PIXELS) return;
  publish({ picture: await client.run('picture', { job, show: showing, scale }, options) });
}

/** What the person looks at closely, at full size where that is not too much. */
function closeUp(client: Client, round: Round): Promise<void> {
  return fine(client, round, CLOSE_PIXELS);
}

/** Small proofs of all colourways, the one in use first. */
async function strip(client: Client, { job, options }: Round): Promise<void> {
  const inUse = job.colourways.filter(({ id }) => id === job.colourway);
  const others = job.colourways.filter(({ id }) => id !== job.colourway);
  for (const { id } of [...inUse, ...others]) {
    const show = { view: 'proof' } as const;
    const small = await client.run(
      'picture',
      { job: { ...job, colourway: id }, show, scale: STRIP },
      options,
    );
    publish({ thumbnails: new Map(resultsStore.getState().thumbnails).set(id, small) });
  }
}

/** Resolves once the hand has rested for a moment. @throws Cancelled */
async function handRests(signal: AbortSignal): Promise<void> {
  do {
    await new Promise((resolve) => setTimeout(resolve, REST_MS));
    if (signal.aborted) throw new Cancelled();
  } while (viewStore.getState().handMoves);
}
