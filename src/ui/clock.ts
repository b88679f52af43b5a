import type { Instant } from '../session/intent.ts';

/** This moment on both clocks. The only place where the session's time is read. */
export const now = (): Instant => instantAt(performance.now());

/** The moment of a time on the `performance.now()` clock. */
export function instantAt(performanceTime: number): Instant {
  const wall = Date.now() - (performance.now() - performanceTime);
  return { utc: new Date(wall).toISOString(), monotonic: Math.round(performanceTime) };
}
