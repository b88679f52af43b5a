import type { Instant } from '../session/intent.ts';

/** This moment on both clocks, with its calendar day here. The only place where the session's time is read. */
export const now = (): Instant => instantAt(performance.now());

/** The moment of a time on the `performance.now()` clock. */
export function instantAt(performanceTime: number): Instant {
  const wall = new Date(Date.now() - (performance.now() - performanceTime));
  return { utc: wall.toISOString(), monotonic: Math.round(performanceTime), day: localDay(wall) };
}

/** The calendar day where the device stands, 'YYYY-MM-DD'. */
export const today = (): string => localDay(new Date());

const localDay = (moment: Date): string =>
  [moment.getFullYear(), moment.getMonth() + 1, moment.getDate()]
    .map((part, i) => String(part).padStart(i === 0 ? 4 : 2, '0'))
    .join('-');
