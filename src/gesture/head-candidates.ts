/** The windows in which something may have gone to and fro as a head does and has just come to rest: a quick look at all of them. Pure. */
import type { Axis, Step } from './history.ts';
import { WINDOWS } from './windows.ts';

/** Ways there and back that sum up to less than this, in this time before now, are no gesture: pixels, milliseconds. */
const LEAST_BACK = 4.5;
const RECENT_MS = 1700;
/** A turn counts when it goes back by more, in pixels and as a part of the whole range. */
const LEAST_TURN = 0.9;
const LEAST_PART_OF_RANGE = 0.2;
/** What has ended is slower now, by the pace of that time; with few pictures a second it cannot be told. */
const MOST_PACE_NOW = 0.6;
const LONG_STEP_MS = 110;
const [FEWEST_SWINGS, MOST_SWINGS] = [4, 9];
/** It ended so long ago at most, and from one turn to the next is no longer, milliseconds. */
const LATEST_MS = 330;
const LONGEST_MS = 1030;
/** One that goes less than this part of those after it is drift: before it the run begins. */
const LEAST_PART = 0.3;
const STILL_BEFORE_MS = 300;
/** So many along each axis are looked at closely. */
const MOST = 16;

export interface Candidate {
  readonly window: number;
  /** The window's motion in each step, pixels. */
  readonly common: Float32Array;
  /** How many windows went to and fro in the same time. */
  readonly together: number;
}

/** The best of the watched windows, by how even and straight the swings are, from rest and back. */
export function headCandidates(steps: readonly Step[], axis: Axis, watched: Uint8Array): readonly Candidate[] {
  const other = axis === 'down' ? 'right' : 'down';
  const rows = steps.map(({ motion }) => motion[axis]);
  const across = steps.map(({ motion }) => motion[other]);
  const ends = Float64Array.from(steps, ({ to }) => to);
  const moves = new Float32Array(rows.length);
  const found = restingWindows(steps, rows, watched).flatMap((window) => {
    for (let i = 0; i < rows.length; i++) moves[i] = rows[i]?.[window] ?? 0;
    const rough = roughRun(moves, ends);
    if (!rough) return [];
    let aside = 0;
    for (let i = rough.first; i <= rough.last; i++) aside += Math.abs(across[i]?.[window] ?? 0);
    const straight = Math.min(3, Math.log(1 + rough.way / (1 + aside)));
    const score = rough.alike - 2 * rough.before - 0.5 * rough.away + 0.5 * straight;
    return [{ ...rough, window, common: moves.slice(), score }];
  });
  found.sort((a, b) => b.score - a.score);
  return found.slice(0, MOST).map(({ window, common, first, last }) => ({
    window,
    common,
    together: found.filter((each) => Math.abs(each.first - first) <= 1 && Math.abs(each.last - last) <= 1).length,
  }));
}

/** Those that have gone there and back lately, and are slower now. */
function restingWindows(steps: readonly Step[], rows: readonly Float32Array[], watched: Uint8Array): readonly number[] {
  const last = steps.at(-1);
  const lastRow = rows.at(-1);
  if (!last || !lastRow) return [];
  const since = steps.findIndex(({ from }) => from >= last.to - RECENT_MS);
  const [way, net] = [new Float32Array(WINDOWS.length), new Float32Array(WINDOWS.length)];
  for (const row of rows.slice(since)) {
    for (let window = 0; window < row.length; window++) {
      const by = row[window] ?? 0;
      way[window] = (way[window] ?? 0) + (by < 0 ? -by : by);
      net[window] = (net[window] ?? 0) + by;
    }
  }
  const step = last.to - last.from;
  const share = step >= LONG_STEP_MS ? Infinity : (MOST_PACE_NOW * step) / (last.to - (steps[since]?.from ?? 0));
  const resting: number[] = [];
  for (let window = 0; window < way.length; window++) {
    const length = way[window] ?? 0;
    const isBack = length - Math.abs(net[window] ?? 0) >= LEAST_BACK;
    if (watched[window] === 1 && isBack && Math.abs(lastRow[window] ?? 0) <= share * length) resting.push(window);
  }
  return resting;
}

interface Rough {
  /** Steps of the first and the last motion. */
  readonly first: number;
  readonly last: number;
  /** The shortest over the longest of the inner swings. */
  readonly alike: number;
  /** How far it ended from where it began, as a part of the longest swing. */
  readonly away: number;
  /** Pace before as a part of the pace meanwhile. */
  readonly before: number;
  /** All swings together, pixels. */
  readonly way: number;
}

/** Turning points, by step and position: written anew for each window, for it is asked of hundreds in every picture. */
const turnsAt = new Int32Array(128);
const turnsBy = new Float32Array(128);

/** The last turns, where there are enough of them and the last is not long ago. */
function roughRun(common: Float32Array, ends: Float64Array): Rough | null {
  let [position, lowest, highest] = [0, 0, 0];
  for (let i = 0; i < common.length; i++) {
    position += common[i] ?? 0;
    if (position < lowest) lowest = position;
    else if (position > highest) highest = position;
  }
  const least = Math.max(LEAST_TURN, LEAST_PART_OF_RANGE * (highest - lowest));
  let [farthest, farthestAt, direction, count] = [0, 0, 0, 0];
  position = 0;
  for (let i = 0; i < common.length; i++) {
    position += common[i] ?? 0;
    if (direction === 0) {
      if (Math.abs(position) <= least) continue;
      direction = position > 0 ? 1 : -1;
      turnsAt[0] = i - 1;
      turnsBy[0] = 0;
      count = 1;
      [farthest, farthestAt] = [position, i];
    } else if ((position - farthest) * direction > 0) {
      [farthest, farthestAt] = [position, i];
    } else if ((farthest - position) * direction > least) {
      turnsAt[count] = farthestAt;
      turnsBy[count] = farthest;
      count += 1;
      [farthest, farthestAt] = [position, i];
      direction = -direction;
    }
  }
  const now = ends[ends.length - 1] ?? 0;
  if (count < FEWEST_SWINGS || now - (ends[farthestAt] ?? 0) > LATEST_MS) return null;
  turnsAt[count] = farthestAt;
  turnsBy[count] = farthest;
  const way = (swing: number): number => Math.abs((turnsBy[swing + 1] ?? 0) - (turnsBy[swing] ?? 0));
  const timeAt = (turn: number): number => ends[Math.max(0, turnsAt[turn] ?? 0)] ?? 0;
  let [most, first] = [0, count];
  for (let swing = count - 1; swing >= 0; swing--) {
    if (
      way(swing) < LEAST_PART * most ||
      (swing < count - 1 && swing > 0 && timeAt(swing + 1) - timeAt(swing) > LONGEST_MS)
    )
      break;
    most = Math.max(most, way(swing));
    first = swing;
  }
  const swings = count - first;
  if (swings < FEWEST_SWINGS || swings > MOST_SWINGS) return null;
  let [shortest, longest, sum] = [Infinity, 0, 0];
  for (let swing = first; swing < count; swing++) {
    const here = way(swing);
    sum += here;
    if (swing === first || swing === count - 1) continue;
    shortest = Math.min(shortest, here);
    longest = Math.max(longest, here);
  }
  // Before the first turn there may have been drift and rest: the swing began one usual swing before the second turn.
  const begin = Math.max(
    timeAt(first),
    timeAt(first + 1) - (timeAt(count) - timeAt(first + 1)) / (count - first - 1) - 1,
  );
  let [moved, from] = [0, 0];
  for (let i = 0; i < ends.length && (ends[i] ?? 0) <= begin; i++) {
    if ((ends[i] ?? 0) <= begin - STILL_BEFORE_MS) continue;
    moved += Math.abs(common[i] ?? 0);
    from = i;
  }
  const pace = sum / Math.max(1, timeAt(count) - begin);
  return {
    first: from + 1,
    last: farthestAt,
    alike: shortest / Math.max(1e-6, longest),
    away: Math.abs((turnsBy[count] ?? 0) - (turnsBy[first] ?? 0)) / Math.max(1e-6, most),
    before: moved / STILL_BEFORE_MS / Math.max(1e-6, pace),
    way: sum,
  };
}
