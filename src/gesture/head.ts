/**
 * Nodding and shaking of the head: what fills a window of the picture goes to and fro together, a few times, at the pace
 * of a head, between two moments of stillness, and is back where it was. No face is looked for: a visor, a beard or a
 * mask change nothing. Pure.
 */
import type { Gesture } from './gesture.ts';
import { measureHead, runOf } from './head-run.ts';
import { headSureness } from './head-sureness.ts';
import type { Axis, Step } from './history.ts';
import { overlap, WINDOWS, type Window } from './windows.ts';

/** Ways there and back that sum up to less than this are no gesture, pixels. */
const LEAST_BACK = 7.2;
/** What is searched for gestures: as long as one with its ends. */
const SEARCHED_MS = 4300;
const CANDIDATES = 12;
const MOST_OVERLAP = 0.75;
/** Less, and it is left: a gesture that was missed is made again, one that was none has answered for somebody. */
const LEAST_SURENESS = 0.73;

export interface HeadOptions {
  /** Windows that are watched, 1 for each. */
  readonly watched: Uint8Array;
  /** Motion before this time has been answered already, or belongs to something else. */
  readonly notBefore: number;
}

/** The gesture of the head that has just ended with the last step; null where there is none. */
export function headGesture(steps: readonly Step[], options: HeadOptions): Gesture | null {
  const now = steps.at(-1)?.to ?? 0;
  const recent = steps.filter(({ from }) => from >= Math.max(now - SEARCHED_MS, options.notBefore));
  if (recent.length < 4) return null;
  let best: Gesture | null = null;
  for (const axis of ['down', 'right'] as const) {
    for (const window of candidates(recent, axis, options.watched)) {
      const gesture = gestureOf(window, recent, axis);
      if (gesture && (!best || gesture.confidence > best.confidence)) best = gesture;
    }
  }
  return best;
}

/** The windows in which most of what changed went there and back along the axis. */
function candidates(steps: readonly Step[], axis: Axis, watched: Uint8Array): readonly number[] {
  const count = WINDOWS.length;
  const [way, net, gain] = [new Float32Array(count), new Float32Array(count), new Float32Array(count)];
  for (const { motion } of steps) {
    const moved = motion[axis];
    const left = axis === 'down' ? motion.leftOfDown : motion.leftOfRight;
    for (let window = 0; window < count; window++) {
      const by = moved[window] ?? 0;
      way[window] = (way[window] ?? 0) + Math.abs(by);
      net[window] = (net[window] ?? 0) + by;
      gain[window] = (gain[window] ?? 0) + (motion.change[window] ?? 0) - (left[window] ?? 0);
    }
  }
  const scores: { readonly window: Window; readonly index: number; readonly score: number }[] = [];
  WINDOWS.forEach((window, index) => {
    const [length, back] = [way[index] ?? 0, (way[index] ?? 0) - Math.abs(net[index] ?? 0)];
    if (watched[index] && back >= LEAST_BACK)
      scores.push({ window, index, score: ((gain[index] ?? 0) * back) / length });
  });
  scores.sort((a, b) => b.score - a.score);
  const chosen: { readonly window: Window; readonly index: number }[] = [];
  for (const { window, index } of scores) {
    if (chosen.some((other) => overlap(other.window, window) > MOST_OVERLAP)) continue;
    chosen.push({ window, index });
    if (chosen.length === CANDIDATES) break;
  }
  return chosen.map(({ index }) => index);
}

function gestureOf(window: number, steps: readonly Step[], axis: Axis): Gesture | null {
  const common = Float32Array.from(steps, ({ motion }) => motion[axis][window] ?? 0);
  const run = runOf(common, steps);
  if (!run) return null;
  const found = measureHead(window, run, steps, axis, common);
  const kind = axis === 'down' ? 'nod' : 'shake';
  const confidence = headSureness(kind, found);
  if (confidence < LEAST_SURENESS) return null;
  const ways = axis === 'down' ? 'up and down' : 'from side to side';
  return {
    kind,
    confidence,
    from: run.from,
    to: run.to,
    why:
      `what fills ${found.size} × ${found.size} pixels went ${ways}, ${found.swings} ways of about ` +
      `${found.way.toFixed(1)} pixels in ${((run.to - run.from) / 1000).toFixed(1)} s, with ${found.area} places ` +
      `around it, and ${Math.round(100 * found.before)} % as fast before`,
  };
}
