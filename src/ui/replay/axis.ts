/** The axis of time of a replay: real time between entries, with long gaps shortened and named. */
import { timeLine } from '../../words/time-line.ts';

/** How long gaps are shortened, in milliseconds: one that is longer than `longest` takes as much room as `shown`. */
export interface Shortening {
  readonly longest: number;
  readonly shown: number;
}

const SECOND = 1000;
const MINUTE = 60 * SECOND;

/** On the drawing: the work of minutes keeps its length, a break for dinner does not. */
export const DRAWN: Shortening = { longest: 5 * MINUTE, shown: MINUTE };
/** While playing: nobody watches a still picture for longer. */
export const PLAYED: Shortening = { longest: 30 * SECOND, shown: 3 * SECOND };

/** A time in which nothing was written, between the entry before `before` and that entry. */
export interface Gap {
  readonly before: number;
  /** In real milliseconds. */
  readonly lasted: number;
  /** Where on the axis it is, and how much of the axis it takes. */
  readonly position: number;
  readonly shown: number;
}

/** Entries with their places on the axis, in milliseconds from the first; they never go back. */
export interface Axis {
  readonly positions: readonly number[];
  readonly length: number;
  readonly gaps: readonly Gap[];
  /** Where the clock had been set back before an entry: time stands still there, and the order is that of the record. */
  readonly setBack: readonly { readonly before: number; readonly by: number }[];
}

/** Lays out entries by their times (RFC 3339), in the order of the record. */
export function layAxis(times: readonly string[], { longest, shown }: Shortening): Axis {
  const positions: number[] = [];
  const gaps: Gap[] = [];
  const setBack: { readonly before: number; readonly by: number }[] = [];
  let position = 0;
  for (const [i, time] of times.entries()) {
    const before = times[i - 1];
    const passed = before === undefined ? 0 : Date.parse(time) - Date.parse(before);
    if (passed < 0) setBack.push({ before: i, by: -passed });
    if (passed > longest) gaps.push({ before: i, lasted: passed, position, shown });
    position += passed > longest ? shown : Math.max(0, passed);
    positions.push(position);
  }
  return { positions, length: position, gaps, setBack };
}

/** The last entry at or before a place on the axis; the first one before all of them. */
export function indexAt({ positions }: Pick<Axis, 'positions'>, position: number): number {
  let [from, to] = [0, positions.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((positions[middle] ?? Infinity) <= position) from = middle + 1;
    else to = middle;
  }
  return Math.max(0, from - 1);
}

/** The entry that is nearest to a place on the axis; of two as near, the earlier one. */
export function nearestTo({ positions }: Pick<Axis, 'positions'>, position: number): number {
  const before = indexAt({ positions }, position);
  const [here, after] = [positions[before] ?? 0, positions[before + 1]];
  return after !== undefined && after - position < position - here ? before + 1 : before;
}

/** A round time on the axis. */
export interface Tick {
  readonly position: number;
  /** RFC 3339. */
  readonly utc: string;
}

const ROUND = [1, 2, 5, 10, 15, 30, 60, 120, 180, 360, 720, 1440].map((minutes) => minutes * MINUTE);

/** Round times along the axis, about `most` of them. Gaps hold none: what is shortened has no scale. */
export function ticksOf(axis: Axis, times: readonly string[], most: number): readonly Tick[] {
  const every = ROUND.find((each) => axis.length / each <= most) ?? Math.ceil(axis.length / most);
  const shortened = new Set(axis.gaps.map(({ before }) => before));
  return times.flatMap((time, i): readonly Tick[] => {
    const [here, next] = [Date.parse(time), Date.parse(times[i + 1] ?? time)];
    if (shortened.has(i + 1)) return [];
    const ticks: Tick[] = [];
    for (let at = Math.ceil(here / every) * every; at < next; at += every)
      ticks.push({ position: (axis.positions[i] ?? 0) + at - here, utc: new Date(at).toISOString() });
    return ticks;
  });
}

/** A length of time in words and figures: "45 s", "12 min", "3 h 5 min", "2 days 4 h". */
export function lasting(milliseconds: number): string {
  const seconds = Math.round(milliseconds / SECOND);
  if (seconds < 120) return timeLine.seconds(seconds);
  const minutes = Math.round(seconds / 60);
  if (minutes < 120) return timeLine.minutes(minutes);
  const hours = Math.floor(minutes / 60);
  return hours < 48 ? timeLine.hours(hours, minutes % 60) : timeLine.days(Math.floor(hours / 24), hours % 24);
}
