import type { Pace } from './types.ts';

/** How many times as long as normal each sound lasts. */
export type Stretch = Readonly<Record<Pace, number>>;

export const DEFAULT_STRETCH: Stretch = { normal: 1, slow: 1.4 };

export const SPEEDS = ['slower', 'normal', 'faster'] as const;

/** How fast people have the voice speak. */
export type Speed = (typeof SPEEDS)[number];

/** How many times as long as normal each speed lasts: figures can still be told apart at the fastest. */
const LASTS: Readonly<Record<Speed, number>> = { slower: 1.25, normal: 1, faster: 0.7 };

export const stretchAt = (speed: Speed): Stretch => ({
  normal: DEFAULT_STRETCH.normal * LASTS[speed],
  slow: DEFAULT_STRETCH.slow * LASTS[speed],
});

const MS_PER_WORD = 450;
const MS_AROUND = 500;

/** A rough guess at how long a voice takes for `text`, in milliseconds: for watchdogs, not for display. */
export const expectedMs = (text: string, stretch: number): number =>
  (text.trim().split(/\s+/).length * MS_PER_WORD + MS_AROUND) * stretch;
