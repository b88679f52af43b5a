/** How costs are measured. */
import { cpus, loadavg } from 'node:os';

/** Enough rounds that the smallest job is measured in tens of milliseconds, and the best of them counts. */
const ROUNDS = 5;
const LONG_ENOUGH_MS = 30;

/** Milliseconds for one run of the work, the best of some rounds: what else the machine does only ever adds. */
export function cost(work: () => void): number {
  const rounds = Array.from({ length: ROUNDS }, () => {
    const from = performance.now();
    let runs = 0;
    do {
      work();
      runs += 1;
    } while (performance.now() - from < LONG_ENOUGH_MS);
    return (performance.now() - from) / runs;
  });
  return Math.min(...rounds);
}

/** How long one run of work took, in milliseconds: by the clock, and of the processors (which other programs do not add to). */
export interface Waited {
  readonly clock: number;
  readonly processor: number;
}

/** What one run of work that is waited for costs, the best of some rounds. */
export async function costOfWaiting(work: () => Promise<unknown>, rounds = ROUNDS): Promise<Waited> {
  let best: Waited = { clock: Infinity, processor: Infinity };
  for (let round = 0; round < rounds; round++) {
    const [from, used] = [performance.now(), process.cpuUsage()];
    await work();
    const { user, system } = process.cpuUsage(used);
    best = {
      clock: Math.min(best.clock, performance.now() - from),
      processor: Math.min(best.processor, (user + system) / 1000),
    };
  }
  return best;
}

/** The value below which a share of the values lies, 0 to 1. */
export function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN;
}

/** What is measured on, and how busy it is: what stands beside milliseconds says little without it. */
export function machine(): string {
  const [first] = cpus();
  const load = loadavg().map((each) => each.toFixed(1));
  return `${cpus().length} × ${first?.model ?? 'unknown processor'}, Node ${process.version}; load ${load.join(', ')} (1, 5, 15 minutes).`;
}

/** A line of the report. */
export const say = (what: string, found: string): void => console.log(`${what}: ${found}`);
