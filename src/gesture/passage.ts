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
  /** Mean height of the band, that of the lower half of the pictures, and the least of any. */
  readonly height: number;
  readonly low: number;
  readonly least: number;
  /** How much is new elsewhere, ahead of the band and behind it. */
  readonly ahead: number;
  readonly behind: number;
  /** Where the band was seen, how much was new there well before it came, and well after it had gone on. */
  readonly came: number;
  readonly stayed: number;
  /** What was new anywhere just before it came, and after it has left. */
  readonly before: number;
  readonly after: number;
  /** The same on the side that it came from before, and on the side where it went out after: as parts of its height. */
  readonly lain: number;
  readonly rest: number;
  /** How far from the edges it was seen first and last. */
  readonly late: number;
  readonly short: number;
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
/** Less is a glint. */
const LEAST_HEIGHT = 0.15;
/** It must be seen so far along the view, at first and at last. */
const SEEN = { first: 0.45, last: 0.55, span: 0.35 };
/** A side of the view, as a part of its width. */
const SIDE = 0.4;
/** What lay on the side that it came from, or is left where it went out: more has not come from outside, or has not gone. */
const MOST_LEFT = 0.6;
/** From here on it is out of the view. */
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
  if (height / count < LEAST_HEIGHT) return null;
  heights.sort();
  const half = Math.ceil(count / 2);
  let low = 0;
  for (let i = 0; i < half; i++) low += (heights[i] ?? 0) / half;
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
    came += heightAt(earlier, way);
    stayed += heightAt(later, way);
  }
  let [before, lain, beforeCount, after, rest, afterCount] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < times.length; i++) {
    const way = wayAt(i);
    if (way < -0.25 && way > -0.25 - BEFORE_MS / crossing) {
      before += meanOf(sums[i], 0, 1);
      lain += meanOf(sums[i], 0, SIDE);
      beforeCount += 1;
    } else if (way > AWAY) {
      after += meanOf(sums[i], 0, 1);
      rest += meanOf(sums[i], 1 - SIDE, 1);
      afterCount += 1;
    }
  }
  const partOfHeight = (sum: number, of: number): number => (of > 0 ? sum / of / (height / count) : 0);
  [lain, rest] = [partOfHeight(lain, beforeCount), partOfHeight(rest, afterCount)];
  if (Math.max(lain, rest) > MOST_LEFT) return null;
  return {
    crossing: direction * crossing,
    from: times[first] ?? 0,
    to: times[last] ?? 0,
    middle,
    pictures: count,
    height: height / count,
    low,
    least: heights[0] ?? 0,
    ahead: ahead / count,
    behind: behind / count,
    came: came / count,
    stayed: stayed / count,
    before: beforeCount > 0 ? before / beforeCount : 0,
    after: afterCount > 0 ? after / afterCount : 0,
    lain,
    rest,
    late: Math.max(0, wayAt(first)),
    short: Math.max(0, 1 - wayAt(last)),
  };
}
