/** What can be measured of the last swings of a window: of their ways and times, and of what changed meanwhile. Pure. */
import type { Candidate } from './head-candidates.ts';
import type { Run } from './head-run.ts';
import { Places } from './head-places.ts';
import { shapeOf, type Shape } from './head-shape.ts';
import { supportOf, type Support } from './head-support.ts';
import type { Axis, Step } from './history.ts';
import type { Swing } from './swings.ts';
import { BLOCK, BLOCK_SIZE, WINDOWS } from './windows.ts';

/** Where it lay is where it was so long before the first way that was seen. */
const LEAD_MS = 350;
/** What was before is looked at for so long. */
const BEFORE_MS = 300;
/** Drift is looked for over so long. */
const DRIFT_MS = 1000;

export interface HeadMeasures extends Support, Shape {
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
  /** How far apart the places were where it was in the second before, over the way. */
  readonly drift: number;
  /** The part of the change in the window that motion across the axis explains. */
  readonly across: number;
  /** How far it went up or left of where it lay, as a part of the whole range. */
  readonly above: number;
  /** Of the window, pixels each way. */
  readonly size: number;
  /** The part of the change in the window that motion along the axis explains. */
  readonly along: number;
  /** Change before, as a part of the change meanwhile. */
  readonly changeBefore: number;
  /** How unlike the swings' times are: standard deviation over mean. */
  readonly uneven: number;
  /** How unlike the times of the two directions are: natural logarithm of their ratio. */
  readonly oneSided: number;
  /** The first and the last way, over the median of all. */
  readonly firstWay: number;
  readonly lastWay: number;
  /** How long ago it ended, milliseconds. */
  readonly waited: number;
  /** Windows that went to and fro in the same time. */
  readonly together: number;
  /** Change in the window from picture to picture, over the camera's noise. */
  readonly change: number;
}

/** @param run swings of the candidate's window, in these steps */
export function measureHead(
  { window: index, common, together }: Candidate,
  run: Run,
  steps: readonly Step[],
  axis: Axis,
): HeadMeasures {
  let [first, end] = [0, steps.length];
  while ((steps[first]?.to ?? Infinity) <= run.from) first += 1;
  while ((steps[end - 1]?.from ?? -Infinity) >= run.to) end -= 1;
  const during = steps.slice(first, end);
  const inside = common.subarray(first, end);
  const other = axis === 'down' ? 'right' : 'down';
  const window = WINDOWS[index] ?? { column: 0, row: 0, size: 1 };
  const across = Float32Array.from(during, ({ motion }) => motion[other][index] ?? 0);
  const places = new Places(during, axis, inside);
  const ways = run.swings.map(({ by }) => Math.abs(by));
  const way = ways.toSorted((a, b) => a - b)[ways.length >> 1] ?? 0;
  const net = run.swings.reduce((sum, { by }) => sum + by, 0);
  const rateOf = (from: number, to: number, valueOf: (step: number) => number): number => {
    const time = (steps[to - 1]?.to ?? 0) - (steps[from]?.from ?? 0);
    let sum = 0;
    for (let i = from; i < to; i++) sum += valueOf(i);
    return to > from ? sum / time : 0;
  };
  const paceAt = (step: number): number => Math.abs(common[step] ?? 0);
  const changeAt = (step: number): number => steps[step]?.motion.change[index] ?? 0;
  const leftOf = (of: Axis) => (step: number) =>
    steps[step]?.motion[of === 'down' ? 'leftOfDown' : 'leftOfRight'][index] ?? 0;
  let lead = first;
  while (lead > 0 && (steps[lead - 1]?.from ?? 0) >= run.from - BEFORE_MS) lead -= 1;
  const pace = Math.max(1e-6, rateOf(first, end, paceAt));
  const changed = Math.max(1e-6, rateOf(first, end, changeAt));
  const inner = ways.slice(1, -1);
  const times = run.swings.map(({ from, to }) => to - from);
  const time = times.reduce((sum, each) => sum + each, 0);
  return {
    way,
    swings: run.swings.length,
    perSwing: (run.to - run.from) / run.swings.length,
    straight: lengthOf(inside) / Math.max(1e-6, lengthOf(across)),
    slant: slantOf(inside, across),
    alike: Math.min(...inner) / Math.max(...inner),
    away: Math.abs(net) / Math.max(1e-6, way),
    before: rateOf(lead, first, paceAt) / pace,
    after: rateOf(end, steps.length, paceAt) / pace,
    drift: driftBefore(run, steps, common) / Math.max(1e-6, way),
    across: 1 - rateOf(first, end, leftOf(other)) / changed,
    above: aboveIn(run, steps, common),
    size: window.size * BLOCK,
    along: 1 - rateOf(first, end, leftOf(axis)) / changed,
    changeBefore: rateOf(lead, first, changeAt) / changed,
    uneven: deviationOf(times) / Math.max(1e-6, time / times.length),
    oneSided: Math.abs(Math.log(meanTime(run.swings, 1) / meanTime(run.swings, -1))),
    firstWay: (ways[0] ?? 0) / Math.max(1e-6, way),
    lastWay: (ways.at(-1) ?? 0) / Math.max(1e-6, way),
    waited: (steps.at(-1)?.to ?? 0) - run.to,
    together,
    change: changeOver(during, index, window.size),
    ...supportOf(window, places),
    ...shapeOf(window, places),
  };
}

/** Of a pixel, from picture to picture, over the camera's noise: the mean. */
function changeOver(during: readonly Step[], index: number, size: number): number {
  const pixels = Math.max(1, during.length) * (size * BLOCK_SIZE) ** 2;
  return during.reduce((sum, { motion }) => sum + (motion.change[index] ?? 0) / motion.noise, 0) / pixels;
}

const lengthOf = (moves: Float32Array): number => moves.reduce((sum, by) => sum + Math.abs(by), 0);

function deviationOf(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
}

/** Of the swings in one direction, milliseconds. */
function meanTime(swings: readonly Swing[], direction: number): number {
  const times = swings.filter(({ by }) => by * direction > 0).map(({ from, to }) => to - from);
  return times.reduce((sum, each) => sum + each, 1) / Math.max(1, times.length);
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

/** The range of where it was in the last second before, pixels. */
function driftBefore(run: Run, steps: readonly Step[], common: Float32Array): number {
  let [position, low, high] = [0, 0, 0];
  steps.forEach(({ from, to }, i) => {
    if (to > run.from || from < run.from - DRIFT_MS) return;
    position += common[i] ?? 0;
    low = Math.min(low, position);
    high = Math.max(high, position);
  });
  return high - low;
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
