import type { Pace } from './types.ts';

/** How many times as long as normal each sound lasts. */
export type Stretch = Readonly<Record<Pace, number>>;

export const DEFAULT_STRETCH: Stretch = { normal: 1, slow: 1.4 };

const MS_PER_WORD = 450;
const MS_AROUND = 500;

/** A rough guess at how long a voice takes for `text`, in milliseconds: for watchdogs, not for display. */
export const expectedMs = (text: string, stretch: number): number =>
  (text.trim().split(/\s+/).length * MS_PER_WORD + MS_AROUND) * stretch;
