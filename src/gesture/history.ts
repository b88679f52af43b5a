/** The motion of the last seconds, block by block. It never holds more, however long the watch. Pure. */
import { BLOCKS, type Motion } from './motion.ts';

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

/**
 * How far each block's contents went there and back, in pixels: half of the way that led nowhere. What nods has much
 * of it. What walks by has little, however fast.
 */
export function thereAndBack(steps: readonly Step[], axis: Axis): Float32Array {
  const way = new Float32Array(BLOCKS);
  const net = new Float32Array(BLOCKS);
  for (const { motion } of steps) {
    const moved = motion[axis];
    for (let block = 0; block < BLOCKS; block++) {
      const by = moved[block] ?? 0;
      way[block] = (way[block] ?? 0) + Math.abs(by);
      net[block] = (net[block] ?? 0) + by;
    }
  }
  return way.map((length, block) => (length - Math.abs(net[block] ?? 0)) / 2);
}
