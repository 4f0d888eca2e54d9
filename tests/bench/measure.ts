/** One measured figure: the median of several runs. */
export interface Measured {
  ms: number;
  /** Processor time over wall time of the median run: a single thread that had a core to itself reads about 1. */
  load: number;
}

/** Runs `work` several times and takes the median run. A first run warms up and is not counted. */
export async function measure(work: () => unknown, runs = 5): Promise<Measured> {
  await work();
  const all: Measured[] = [];
  for (let i = 0; i < runs; i++) {
    const cpu = process.cpuUsage();
    const started = performance.now();
    await work();
    const ms = performance.now() - started;
    const { user, system } = process.cpuUsage(cpu);
    all.push({ ms, load: (user + system) / 1000 / ms });
  }
  return all.sort((a, b) => a.ms - b.ms)[runs >> 1]!;
}
