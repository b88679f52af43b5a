/** The motion of the last seconds, window by window. It never holds more, however long the watch. Pure. */
import type { Motion } from './motion.ts';

/** Longer than the longest gesture with the stillness before it. */
export const KEPT_MS = 4500;
/** At the least step of the watcher, so many make up that time. */
const MOST_STEPS = 96;

export interface Step {
  /** The motion happened between these times. */
  readonly from: number;
  readonly to: number;
  readonly motion: Motion;
}

export class History {
  #steps: Step[] = [];

  add(step: Step): void {
    this.#steps.push(step);
    const first = this.#steps.findIndex(({ to }) => to > step.to - KEPT_MS);
    this.#steps.splice(0, Math.max(first, this.#steps.length - MOST_STEPS));
  }

  clear(): void {
    this.#steps = [];
  }

  /** Oldest first. */
  get steps(): readonly Step[] {
    return this.#steps;
  }
}

/** Which way motion is looked at. */
export type Axis = 'right' | 'down';
