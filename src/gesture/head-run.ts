/** The last swings of what fills a window, where they have just ended. Pure. */
import type { Step } from './history.ts';
import { lastRun, swingsOf, type Moved, type Swing } from './swings.ts';

/** One nod is a glance down and up; two are an answer. */
const LEAST_SWINGS = 4;
/** Who goes on longer is at work. */
const MOST_SWINGS = 9;
const LONGEST_MS = 3600;
/** A swing that is slower is drift; so is one that goes less than this part of those after it. */
const RUN = { longestPause: 280, longest: 750, leastPart: 0.3 };
/** Ways under this are talk and breath, pixels. */
const LEAST_WAY = 1.8;
/** It is watched for so long before. */
const SEEN_BEFORE_MS = 250;
/** It has ended when nothing moved for so long; with fewer pictures a second than this step, with the last swing. */
const STILL_AFTER_MS = 80;
const LONG_STEP_MS = 110;
/** What was not told by then is not told any more. */
const LATEST_MS = 330;

export interface Run {
  readonly swings: readonly Swing[];
  readonly from: number;
  readonly to: number;
}

/** The last swings, where they have just ended. */
export function runOf(common: Float32Array, steps: readonly Step[]): Run | null {
  const moves = steps.map(({ from, to }, i): Moved => ({ from, to, by: common[i] ?? 0 }));
  const rough = swingsOf(moves, LEAST_WAY / 2);
  const way = Math.max(0, ...lastRun(rough, RUN).map(({ by }) => Math.abs(by)));
  const swings = lastRun(swingsOf(moves, Math.max(LEAST_WAY / 2, 0.25 * way)), RUN);
  const [first, last] = [swings[0], swings.at(-1)];
  if (!first || !last || swings.length < LEAST_SWINGS || swings.length > MOST_SWINGS) return null;
  const now = steps.at(-1)?.to ?? 0;
  const step = now - (steps.at(-1)?.from ?? now);
  const stillAfter = step >= LONG_STEP_MS ? 0 : Math.min(STILL_AFTER_MS, step);
  if (now - last.to < stillAfter || now - last.to > LATEST_MS || last.to - first.from > LONGEST_MS) return null;
  const begin = steps[0]?.from ?? 0;
  if (first.from - begin < SEEN_BEFORE_MS) return null;
  return { swings, from: first.from, to: last.to };
}
