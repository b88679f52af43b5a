/**
 * Nodding and shaking of the head: a patch of the picture that goes to and fro together, a few times, at the pace of a
 * head, between two moments of stillness, and is back where it was. No face is looked for: a visor, a beard or a mask
 * change nothing. Pure.
 */
import { margin, type Gesture } from './gesture.ts';
import { thereAndBack, type Axis, type Step } from './history.ts';
import { motionOf, patchesOf, togetherIn, type Patch } from './patch.ts';
import { lastRun, swingsOf, type Moved, type Swing } from './swings.ts';

/** One nod is a glance down and up; two are an answer. */
const LEAST_SWINGS = 4;
/** Who goes on longer is at work. */
const MOST_SWINGS = 9;
const LONGEST_MS = 3600;
/** A head takes so long for one way, on the average; and none of them longer than this. */
const SWING_MS = { least: 150, most: 570, longest: 700 };
const LONGEST_PAUSE_MS = 280;
/** Ways under this are talk and breath, in pixels and as a part of the patch. */
const LEAST_WAY = 1.8;
/** What a camera that shakes leaves after its motion was taken off, as a part of it. */
const CAMERA_DOUBT = 1.3;
/** Less, and it is left: a gesture that was missed is made again, one that was none has answered for somebody. */
const LEAST_CONFIDENCE = 0.4;
/** Smaller patches than this each way are no head, pixels. */
const LEAST_SIZE = 24;
/** The patch holds still so long before. Afterwards a little less: the answer is wanted at once. */
const STILL_BEFORE_MS = 250;
const STILL_AFTER_MS = 130;
/** Part of the mean pace that counts as still. */
const STILL_PACE = 0.3;
/** Where it lay is where it was so long before the first way that was seen. */
const LEAD_MS = 350;
/** What is searched for patches: as long as a gesture with its ends. */
const WINDOW_MS = 4300;
const PATCHES = 3;

export interface HeadOptions {
  /** Blocks that are watched, 1 for each. */
  readonly watched: Uint8Array;
  /** Motion before this time has been answered already, or belongs to something else. */
  readonly notBefore: number;
}

/** The gesture of the head that has just ended with the last step; null where there is none. */
export function headGesture(steps: readonly Step[], options: HeadOptions): Gesture | null {
  const now = steps.at(-1)?.to ?? 0;
  const recent = steps.filter(({ from }) => from >= Math.max(now - WINDOW_MS, options.notBefore));
  if (recent.length < 4) return null;
  let best: Gesture | null = null;
  for (const axis of ['down', 'right'] as const) {
    const values = thereAndBack(recent, axis).map((value, block) => (options.watched[block] ? value : 0));
    for (const patch of patchesOf(values, LEAST_WAY, PATCHES)) {
      const gesture = gestureOf(patch, recent, axis);
      if (gesture && (!best || gesture.confidence > best.confidence)) best = gesture;
    }
  }
  return best;
}

function gestureOf(rough: Patch, steps: readonly Step[], axis: Axis): Gesture | null {
  const run = runOf(motionOf(rough, steps, axis), steps);
  if (!run) return null;
  const during = steps.filter(({ from, to }) => to > run.from && from < run.to);
  const { patch } = togetherIn(rough, during, axis, motionOf(rough, during, axis));
  if (!patch) return null;
  const common = motionOf(patch, steps, axis);
  const refined = runOf(common, steps);
  if (!refined) return null;
  const measures = measure(patch, rough, refined, steps, axis, common);
  return measures && verdict(measures, refined, axis);
}

interface Run {
  readonly swings: readonly Swing[];
  readonly from: number;
  readonly to: number;
}

/** The last swings, where they have just ended. */
function runOf(common: Float32Array, steps: readonly Step[]): Run | null {
  const moves = steps.map(({ from, to }, i): Moved => ({ from, to, by: common[i] ?? 0 }));
  const rough = swingsOf(moves, LEAST_WAY / 2);
  const way = Math.max(0, ...lastRun(rough, LONGEST_PAUSE_MS).map(({ by }) => Math.abs(by)));
  const swings = lastRun(swingsOf(moves, Math.max(LEAST_WAY / 2, 0.25 * way)), LONGEST_PAUSE_MS);
  const [first, last] = [swings[0], swings.at(-1)];
  if (!first || !last || swings.length < LEAST_SWINGS || swings.length > MOST_SWINGS) return null;
  const now = steps.at(-1)?.to ?? 0;
  const step = now - (steps.at(-1)?.from ?? now);
  if (now - last.to < Math.min(STILL_AFTER_MS, step) || last.to - first.from > LONGEST_MS) return null;
  const begin = steps[0]?.from ?? 0;
  if (first.from - begin < STILL_BEFORE_MS) return null;
  return { swings, from: first.from, to: last.to };
}

interface Measures {
  readonly way: number;
  /** The way as a part of the patch's size along it. */
  readonly part: number;
  readonly together: number;
  /** Motion along the axis over motion across it. */
  readonly straight: number;
  /** The shortest over the longest of the swings' times. */
  readonly even: number;
  /** How far it ended from where it began, as a part of the way. */
  readonly away: number;
  /** Pace before, and after, as a part of the pace meanwhile. */
  readonly stillness: number;
  /** The part of the change in the patch that is motion of what was there: what comes and goes leaves much unexplained. */
  readonly explained: number;
  /** How far it went up or left of where it lay, as a part of the whole range. */
  readonly above: number;
  readonly camera: number;
  readonly slowest: number;
  readonly quickest: number;
  readonly size: { readonly width: number; readonly height: number };
}

function measure(
  patch: Patch,
  rough: Patch,
  run: Run,
  steps: readonly Step[],
  axis: Axis,
  common: Float32Array,
): Measures | null {
  const during = steps.filter(({ from, to }) => to > run.from && from < run.to);
  const inside = common.filter((_, i) => {
    const step = steps[i];
    return step !== undefined && step.to > run.from && step.from < run.to;
  });
  const across = motionOf(patch, during, axis === 'down' ? 'right' : 'down');
  const ways = run.swings.map(({ by }) => Math.abs(by)).sort((a, b) => a - b);
  const times = run.swings.map(({ from, to }) => to - from);
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
  const stillness = Math.max(
    paceWhere(({ from, to }) => to <= run.from && from >= run.from - STILL_BEFORE_MS - 50),
    paceWhere(({ from }) => from >= run.to),
  );
  const extent = axis === 'down' ? patch.height : patch.width;
  return {
    way,
    part: way / extent,
    together: togetherIn(rough, during, axis, motionOf(rough, during, axis)).part,
    straight: lengthOf(inside) / Math.max(1e-6, lengthOf(across)),
    even: Math.min(...times) / Math.max(...times),
    away: Math.abs(net) / Math.max(1e-6, way),
    stillness: stillness / Math.max(1e-6, pace),
    explained: explainedIn(rough, during),
    above: aboveIn(run, steps, common),
    camera: during.reduce((sum, { motion }) => sum + Math.abs(motion.camera[axis]), 0) / during.length,
    slowest: Math.max(...times),
    quickest: Math.min(...times),
    size: { width: patch.width, height: patch.height },
  };
}

function explainedIn({ blocks }: Patch, steps: readonly Step[]): number {
  let [change, left] = [0, 0];
  for (const { motion } of steps) {
    for (const block of blocks) {
      change += motion.change[block] ?? 0;
      left += motion.left[block] ?? 0;
    }
  }
  return change > 0 ? 1 - left / change : 0;
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

function verdict(found: Measures, run: Run, axis: Axis): Gesture | null {
  const perSwing = (run.to - run.from) / run.swings.length;
  if (perSwing < SWING_MS.least || perSwing > SWING_MS.most || found.slowest > SWING_MS.longest) return null;
  if (Math.min(found.size.width, found.size.height) < LEAST_SIZE) return null;
  const least = LEAST_WAY + CAMERA_DOUBT * found.camera;
  const margins = [
    margin(found.way, least, 2 * least),
    margin(found.part, 0.03, 0.06),
    margin(found.part, 0.55, 0.38),
    margin(found.together, 0.28, 0.65),
    // What swings on a pivot goes aside as well.
    margin(found.straight, 2.6, 5.2),
    margin(found.even, 0.12, 0.35),
    margin(found.away, 1.25, 0.7),
    margin(found.stillness, 0.65, STILL_PACE),
    // Noise moves nothing; it only differs.
    margin(found.explained, 0.2, 0.35),
    // Who nods goes down from where the head rests; who shakes it goes to both sides of that.
    axis === 'down' ? margin(found.above, 0.5, 0.3) : margin(Math.min(found.above, 1 - found.above), 0.14, 0.3),
  ];
  const confidence = margins.reduce((product, value) => product * (0.5 + 0.5 * value), 1);
  if (Math.min(...margins) <= 0 || confidence < LEAST_CONFIDENCE) return null;
  const kind = axis === 'down' ? 'nod' : 'shake';
  const ways = axis === 'down' ? 'up and down' : 'from side to side';
  return {
    kind,
    confidence,
    from: run.from,
    to: run.to,
    why:
      `a patch of ${found.size.width} × ${found.size.height} pixels went ${ways}, ${run.swings.length} ways of about ` +
      `${found.way.toFixed(1)} pixels in ${((run.to - run.from) / 1000).toFixed(1)} s, ` +
      `${Math.round(100 * found.together)} % of it together, still before and after`,
  };
}
