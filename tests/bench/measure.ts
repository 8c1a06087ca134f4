/** Times, sorted, and their percentiles. */
export type Times = Readonly<{ p50: number; p95: number; runs: number }>;

/** Run `work` so often and report milliseconds. The first tenth warms up and does not count. */
export async function measure(runs: number, work: (run: number) => unknown): Promise<Times> {
  const warm = Math.ceil(runs / 10);
  const times: number[] = [];
  for (let run = 0; run < runs + warm; run += 1) {
    const began = performance.now();
    await work(run);
    const took = performance.now() - began;
    if (run >= warm) times.push(took);
  }
  times.sort((a, b) => a - b);
  return { p50: percentile(times, 50), p95: percentile(times, 95), runs };
}

/** Nearest rank. */
const percentile = (sorted: readonly number[], p: number): number =>
  round(sorted[Math.max(0, Math.ceil((sorted.length * p) / 100) - 1)] ?? Number.NaN);
const round = (ms: number): number => Math.round(ms * 1000) / 1000;
