/** The last swings of what fills a window, where they have just ended, and what can be measured of them. Pure. */
import { supportOf, type Support } from './head-support.ts';
import type { Axis, Step } from './history.ts';
import { lastRun, swingsOf, type Moved, type Swing } from './swings.ts';
import { BLOCK, WINDOWS } from './windows.ts';

/** One nod is a glance down and up; two are an answer. */
const LEAST_SWINGS = 4;
/** Who goes on longer is at work. */
const MOST_SWINGS = 9;
const LONGEST_MS = 3600;
/** A swing that is slower is drift; so is one that goes less than this part of those after it. */
const RUN = { longestPause: 280, longest: 750, leastPart: 0.3 };
/** Ways under this are talk and breath, pixels. */
const LEAST_WAY = 1.8;
/** It holds still so long before. Afterwards less: the answer is wanted at once. */
const STILL_BEFORE_MS = 250;
const STILL_AFTER_MS = 130;
/** What was not told by then is not told any more. */
const LATEST_MS = 330;
/** Where it lay is where it was so long before the first way that was seen. */
const LEAD_MS = 350;

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
  if (now - last.to < Math.min(STILL_AFTER_MS, step) || now - last.to > LATEST_MS || last.to - first.from > LONGEST_MS)
    return null;
  const begin = steps[0]?.from ?? 0;
  if (first.from - begin < STILL_BEFORE_MS) return null;
  return { swings, from: first.from, to: last.to };
}

export interface HeadMeasures extends Support {
  /** Pixels, the median of the swings. */
  readonly way: number;
  readonly swings: number;
  /** Milliseconds, the mean. */
  readonly perSwing: number;
  /** Motion along the axis over motion across it. */
  readonly straight: number;
  /** How far it went aside with each pixel along the axis: what swings on a pivot does. */
  readonly slant: number;
  /** The shortest over the longest of the inner swings' ways. */
  readonly alike: number;
  /** How far it ended from where it began, as a part of the way. */
  readonly away: number;
  /** Pace before, and after, as a part of the pace meanwhile. */
  readonly before: number;
  readonly after: number;
  /** The part of the change in the window that motion across the axis explains. */
  readonly across: number;
  /** How far it went up or left of where it lay, as a part of the whole range. */
  readonly above: number;
  /** Of the window, pixels each way. */
  readonly size: number;
}

/** @param common the window's motion in each step, pixels */
export function measureHead(
  window: number,
  run: Run,
  steps: readonly Step[],
  axis: Axis,
  common: Float32Array,
): HeadMeasures {
  const isDuring = ({ from, to }: Step): boolean => to > run.from && from < run.to;
  const during = steps.filter(isDuring);
  const inside = common.filter((_, i) => {
    const step = steps[i];
    return step !== undefined && isDuring(step);
  });
  const other = axis === 'down' ? 'right' : 'down';
  const across = Float32Array.from(during, ({ motion }) => motion[other][window] ?? 0);
  const ways = run.swings.map(({ by }) => Math.abs(by)).sort((a, b) => a - b);
  const way = ways[ways.length >> 1] ?? 0;
  const net = run.swings.reduce((sum, { by }) => sum + by, 0);
  const lengthOf = (moves: Float32Array): number => moves.reduce((sum, by) => sum + Math.abs(by), 0);
  const pace = lengthOf(inside) / (run.to - run.from);
  const outside = steps.map((step, i) => ({ step, by: Math.abs(common[i] ?? 0) }));
  const paceWhere = (isMeant: (step: Step) => boolean): number => {
    const meant = outside.filter(({ step }) => isMeant(step));
    const time = meant.reduce((sum, { step }) => sum + step.to - step.from, 0);
    return time === 0 ? 0 : meant.reduce((sum, { by }) => sum + by, 0) / time;
  };
  const sum = (valueOf: (step: Step) => number): number => during.reduce((total, step) => total + valueOf(step), 0);
  const change = sum(({ motion }) => motion.change[window] ?? 0);
  const left = sum(({ motion }) => (axis === 'down' ? motion.leftOfRight : motion.leftOfDown)[window] ?? 0);
  const inner = run.swings.slice(1, -1).map(({ by }) => Math.abs(by));
  return {
    way,
    swings: run.swings.length,
    perSwing: (run.to - run.from) / run.swings.length,
    straight: lengthOf(inside) / Math.max(1e-6, lengthOf(across)),
    slant: slantOf(inside, across),
    alike: Math.min(...inner) / Math.max(...inner),
    away: Math.abs(net) / Math.max(1e-6, way),
    before:
      paceWhere(({ from, to }) => to <= run.from && from >= run.from - STILL_BEFORE_MS - 50) / Math.max(1e-6, pace),
    after: paceWhere(({ from }) => from >= run.to) / Math.max(1e-6, pace),
    across: change > 0 ? 1 - left / change : 0,
    above: aboveIn(run, steps, common),
    size: (WINDOWS[window]?.size ?? 1) * BLOCK,
    ...supportOf(window, during, axis, inside),
  };
}

/** How far it went aside with each pixel along the axis. */
function slantOf(along: Float32Array, across: Float32Array): number {
  let [power, shared] = [0, 0];
  along.forEach((by, i) => {
    power += by * by;
    shared += by * (across[i] ?? 0);
  });
  return power > 0 ? Math.abs(shared) / power : 0;
}

/** How far it went up or left of where it lay before, as a part of its whole range; half where it went alike to both sides. */
function aboveIn(run: Run, steps: readonly Step[], common: Float32Array): number {
  let [position, low, high] = [0, 0, 0];
  steps.forEach(({ from, to }, i) => {
    if (to <= run.from - LEAD_MS || from >= run.to) return;
    position += common[i] ?? 0;
    low = Math.min(low, position);
    high = Math.max(high, position);
  });
  return high > low ? -low / (high - low) : 0;
}
