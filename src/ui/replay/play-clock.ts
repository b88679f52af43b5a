/** Playing back: which entry is due at a moment, as a function of time alone. */
import { indexAt, type Axis } from './axis.ts';

/** How many times faster than real time a record may be played. */
export const SPEEDS = [1, 4, 16] as const;
export type Speed = (typeof SPEEDS)[number];

/** A record being played. */
export interface Playing {
  /** When it began, in milliseconds on a clock that never goes back. */
  readonly since: number;
  /** Where on the axis it began. */
  readonly from: number;
  readonly speed: Speed;
}

/** Begins to play at an entry; at the last one, from the first. */
export function playFrom(axis: Axis, index: number, speed: Speed, now: number): Playing {
  const isLast = index >= axis.positions.length - 1;
  return { since: now, from: isLast ? 0 : (axis.positions[index] ?? 0), speed };
}

/** Where on the axis it has come. */
export const playedTo = ({ since, from, speed }: Playing, now: number): number =>
  from + Math.max(0, now - since) * speed;

/** The same, at another speed from now on. */
export const atSpeed = (playing: Playing, speed: Speed, now: number): Playing => ({
  since: now,
  from: playedTo(playing, now),
  speed,
});

/** The entry that is shown at that moment. It never goes back while it plays. */
export const entryDue = (axis: Axis, playing: Playing, now: number): number => indexAt(axis, playedTo(playing, now));

/** Whether the last entry has been reached. */
export const isPlayedOut = (axis: Axis, playing: Playing, now: number): boolean =>
  playedTo(playing, now) >= axis.length;
