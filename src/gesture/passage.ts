/** Whether something passes across the picture: a band of what is new that follows one line through time. Pure. */
import { passageSureness } from './passage-sureness.ts';

/** Of each column of the view, the part of its height that is not as it was, at a time. */
export interface Profile {
  readonly time: number;
  readonly parts: Float32Array;
}

/** A line through time and what lies along it. Heights are parts of the view, 0 to 1. */
export interface Passage {
  /** Milliseconds for the whole width of the view, to the right; negative to the left. */
  readonly crossing: number;
  /** The first and the last picture that show it. */
  readonly from: number;
  readonly to: number;
  /** When the band is in the middle of the view. */
  readonly middle: number;
  readonly pictures: number;
  /** Mean height of the band, and the least of any picture. */
  readonly height: number;
  readonly least: number;
  /** How much is new elsewhere, ahead of the band and behind it. */
  readonly ahead: number;
  readonly behind: number;
  /** Where the band was seen, how much was new there well before it came, and well after it had gone on. */
  readonly came: number;
  readonly stayed: number;
  /** By how much the band is higher than either: the mean, and that of the lower half of the pictures. */
  readonly excess: number;
  readonly lowExcess: number;
  /** What was new anywhere just before it came, and after it has left. */
  readonly before: number;
  readonly after: number;
  /** How much more is new after than before on the side where it went out. */
  readonly left: number;
  /** How far from the edge it was seen first. */
  readonly late: number;
}

/** Milliseconds for the width that are tried. */
const CROSSINGS = [90, 120, 160, 200, 250, 310, 380, 460, 560, 680, 820];
/**
 * How far the middle of the band must have come, as a part of the view: so far that a hand is out of it, and what comes
 * into view to take something is seen to stay, or to go back.
 */
const OVER = 1.2;
/** Half of the band that is looked at, and how far from its middle nothing should be new: parts of the view. */
const HALF_BAND = 0.075;
const CLEAR = 0.3;
/** It was over so long ago at most. */
const LATEST_MS = 240;
/** Lines that are tried in the time of one crossing. */
const STEPS = 14;
/** Less, on the mean, is a glint; in any one picture, nothing is seen of it there. */
const LEAST_HEIGHT = 0.15;
const LEAST_SEEN = 0.06;
/** It must be seen so far along the view, at first and at last. */
const SEEN = { first: 0.45, last: 0.55, span: 0.35 };
/** A side of the view, as a part of its width. */
const SIDE = 0.4;
/**
 * What is on the side that it came from only before, or where it went out only after, as a part of its height: with more
 * it has not come from outside, or has not gone.
 */
const MOST_LEFT = 0.6;
/** Until then it has not come into the view; from the second on it is out of it: parts of its way. */
const BEFORE = -0.25;
const AWAY = 1.15;
/** What was there before it is looked at for so long. */
const BEFORE_MS = 300;

/** The surest passage that has just come to its end; null where nothing of the kind is seen. */
export function passageOf(profiles: readonly Profile[], notBefore: number): Passage | null {
  let best: Passage | null = null;
  let most = 0;
  for (const found of passagesOf(profiles, notBefore)) {
    const sureness = passageSureness(found);
    if (sureness > most) [best, most] = [found, sureness];
  }
  return best;
}

/** Every line that has just come to its end and along which something is new. */
export function passagesOf(profiles: readonly Profile[], notBefore: number): readonly Passage[] {
  const now = profiles.at(-1)?.time ?? 0;
  if (profiles.filter(({ parts }) => parts.some((part) => part >= LEAST_HEIGHT)).length < 2) return [];
  const times = profiles.map(({ time }) => time);
  const views = [1, -1].map((direction): View => ({ direction, times, sums: sumsOf(profiles, direction) }));
  const found: Passage[] = [];
  for (const crossing of CROSSINGS) {
    // The band is at the part p of its way at the time middle + (p − 0.5) × crossing.
    const latest = now - (OVER - 0.5) * crossing;
    const earliest = Math.max(latest - LATEST_MS, notBefore + 0.5 * crossing);
    for (let middle = latest; middle >= earliest; middle -= crossing / STEPS) {
      const line = lineOf(times, crossing, middle);
      if (!line) continue;
      for (const view of views) {
        const passage = along(view, line);
        if (passage) found.push(passage);
      }
    }
  }
  return found;
}

/** The profiles as one who looks along a direction sees them: each as sums from the side that it comes from. */
interface View {
  readonly direction: number;
  readonly times: readonly number[];
  readonly sums: readonly Float32Array[];
}

const sumsOf = (profiles: readonly Profile[], direction: number): readonly Float32Array[] =>
  profiles.map(({ parts }) => {
    const sums = new Float32Array(parts.length + 1);
    for (let x = 0; x < parts.length; x++)
      sums[x + 1] = (sums[x] ?? 0) + (parts[direction > 0 ? x : parts.length - 1 - x] ?? 0);
    return sums;
  });

/** The mean from one part of the way to another. */
function meanOf(sums: Float32Array | undefined, low: number, high: number): number {
  if (!sums) return 0;
  const columns = sums.length - 1;
  const a = Math.max(0, Math.round(low * columns));
  const b = Math.min(columns, Math.round(high * columns));
  return b > a ? ((sums[b] ?? 0) - (sums[a] ?? 0)) / (b - a) : 0;
}

/** Milliseconds for the width, whichever way; and the first and the last picture on the line. */
interface Line {
  readonly crossing: number;
  readonly middle: number;
  readonly first: number;
  readonly last: number;
}

const wayOf = ({ crossing, middle }: Pick<Line, 'crossing' | 'middle'>, time: number): number =>
  (time - middle) / crossing + 0.5;

/** The line with the pictures on it; null where they show too little of it. */
function lineOf(times: readonly number[], crossing: number, middle: number): Line | null {
  const half = 0.52 * crossing;
  const first = times.findIndex((time) => time >= middle - half);
  const last = times.findLastIndex((time) => time <= middle + half);
  const line = { crossing, middle, first, last };
  if (first < 0 || last <= first) return null;
  const [from, to] = [wayOf(line, times[first] ?? 0), wayOf(line, times[last] ?? 0)];
  return from > SEEN.first || to < SEEN.last || to - from < SEEN.span ? null : line;
}

function along({ direction, times, sums }: View, line: Line): Passage | null {
  const { crossing, middle, first, last } = line;
  const count = last - first + 1;
  const wayAt = (i: number): number => wayOf(line, times[i] ?? 0);
  const heightAt = (i: number, way: number): number => meanOf(sums[i], way - HALF_BAND, way + HALF_BAND);
  const heights = new Float32Array(count);
  let height = 0;
  for (let i = first; i <= last; i++) {
    const here = heightAt(i, wayAt(i));
    heights[i - first] = here;
    height += here;
  }
  const least = Math.min(...heights);
  if (height / count < LEAST_HEIGHT || least < LEAST_SEEN) return null;
  const excesses = new Float32Array(count);
  let [ahead, behind, came, stayed] = [0, 0, 0, 0];
  // Whatever passes on has left a place by the first picture after that, and was not there in the last one before.
  const apart = CLEAR * crossing;
  for (let i = first; i <= last; i++) {
    const [way, time] = [wayAt(i), times[i] ?? 0];
    ahead += meanOf(sums[i], way + CLEAR, 1);
    behind += meanOf(sums[i], 0, way - CLEAR);
    let earlier = i;
    while (earlier >= 0 && (times[earlier] ?? 0) > time - apart) earlier--;
    let later = i;
    while (later < times.length && (times[later] ?? 0) < time + apart) later++;
    const [then, afterwards] = [heightAt(earlier, way), heightAt(later, way)];
    came += then;
    stayed += afterwards;
    excesses[i - first] = (heights[i - first] ?? 0) - Math.max(then, afterwards);
  }
  const before = { count: 0, all: 0, near: 0, far: 0 };
  const after = { ...before };
  for (let i = 0; i < times.length; i++) {
    const way = wayAt(i);
    const at = way > AWAY ? after : way < BEFORE && way > BEFORE - BEFORE_MS / crossing ? before : null;
    if (!at) continue;
    at.count += 1;
    at.all += (meanOf(sums[i], 0, 1) - at.all) / at.count;
    at.near += (meanOf(sums[i], 0, SIDE) - at.near) / at.count;
    at.far += (meanOf(sums[i], 1 - SIDE, 1) - at.far) / at.count;
  }
  const gone = before.near - after.near;
  const left = Math.max(0, after.far - before.far);
  if (Math.max(gone, left) > (MOST_LEFT * height) / count) return null;
  return {
    crossing: direction * crossing,
    from: times[first] ?? 0,
    to: times[last] ?? 0,
    middle,
    pictures: count,
    height: height / count,
    least,
    ahead: ahead / count,
    behind: behind / count,
    came: came / count,
    stayed: stayed / count,
    excess: excesses.reduce((sum, each) => sum + each / count, 0),
    lowExcess: lowOf(excesses),
    before: before.all,
    after: after.all,
    left,
    late: Math.max(0, wayAt(first)),
  };
}

/** The mean of the lower half. */
function lowOf(values: Float32Array): number {
  const half = values
    .slice()
    .sort()
    .subarray(0, Math.ceil(values.length / 2));
  return half.reduce((sum, each) => sum + each / half.length, 0);
}
