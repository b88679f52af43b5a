export const SPEEDS = ['slower', 'normal', 'faster'] as const;

/** How fast people have the voice speak. */
export type Speed = (typeof SPEEDS)[number];

/** How many times as long as normal each sound lasts. Our own choice. */
export const STRETCH: Readonly<Record<Speed, number>> = { slower: 1.25, normal: 1, faster: 0.7 };

const MS_PER_WORD = 450;
const MS_AROUND = 500;

/** A rough guess at how long a voice takes for `text`, in milliseconds: for watchdogs, not for display. */
export const expectedMs = (text: string, stretch: number): number =>
  (text.trim().split(/\s+/).length * MS_PER_WORD + MS_AROUND) * stretch;
