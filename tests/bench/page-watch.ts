import type { Page } from 'playwright-core';

/** What the page saw of itself; times in ms since it was opened. */
export interface Seen {
  /** Main-thread tasks of 50 ms and more: shorter ones are not told. */
  tasks: { at: number; ms: number }[];
  /** Steps that the engine began. */
  steps: { at: number; node: string }[];
  /** Pictures that were painted, as 1/n. */
  painted: { at: number; scale: number }[];
  /** Pointers that were let go. */
  clicks: number[];
}

declare global {
  var seen: Seen;
}

/** Has a page watch itself from its first moment. */
export async function watch(page: Page): Promise<void> {
  await page.addInitScript(() => {
    globalThis.seen = { tasks: [], steps: [], painted: [], clicks: [] };
    const { tasks, steps, painted, clicks } = globalThis.seen;
    new PerformanceObserver((list) => {
      for (const { startTime, duration } of list.getEntries()) tasks.push({ at: startTime, ms: duration });
    }).observe({ type: 'longtask', buffered: true });
    new PerformanceObserver((list) => {
      for (const { name, startTime: at, detail } of list.getEntries() as PerformanceMark[]) {
        if (name === 'keyblock step') steps.push({ at, node: detail });
        if (name === 'keyblock painted') painted.push({ at, scale: detail });
      }
    }).observe({ type: 'mark', buffered: true });
    window.addEventListener('pointerup', ({ timeStamp }) => clicks.push(timeStamp), true);
  });
}

/** Does something and tells what the page saw meanwhile. */
export async function during(page: Page, act: () => Promise<unknown>): Promise<Seen> {
  const from = await page.evaluate(() => performance.now());
  await act();
  const { tasks, steps, painted, clicks } = await page.evaluate(() => globalThis.seen);
  const since = <Entry extends { at: number }>(all: Entry[]) => all.filter(({ at }) => at >= from);
  return {
    tasks: since(tasks),
    steps: since(steps),
    painted: since(painted),
    clicks: clicks.filter((at) => at >= from),
  };
}

/** The longest of some tasks, ms; null when none took 50. */
export function longest({ tasks }: Pick<Seen, 'tasks'>): number | null {
  return tasks.length > 0 ? Math.max(...tasks.map(({ ms }) => ms)) : null;
}
