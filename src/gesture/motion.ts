/**
 * How far what is seen in each window of the picture has moved since the picture before, along each axis, by matching
 * detail. What the whole picture does alike is the camera's own motion, and is taken off first. Pure.
 */
import { between, cameraBetween, shifted } from './camera-motion.ts';
import { HALF_HEIGHT, HALF_WIDTH, type Picture } from './picture.ts';
import { BLOCK_SIZE, BLOCKS, COLUMNS, ROWS, WINDOWS } from './windows.ts';

/** Of each window, since the picture before. */
export interface Motion {
  /** Pixels of the frame, along each axis as if it had not moved along the other. */
  readonly right: Float32Array;
  readonly down: Float32Array;
  /** How much the window differed, less noise, and how much of that is left when it is moved so: grey detail summed. */
  readonly change: Float32Array;
  readonly leftOfRight: Float32Array;
  readonly leftOfDown: Float32Array;
  /** Of the camera, the mean of a pixel's grey detail. */
  readonly noise: number;
}

/** Farthest that is looked for, pixels of half size: 20 of the frame. */
const REACH = 10;
const SHIFTS = 2 * REACH + 1;
/** What a pixel of displacement must save, as a part of the noise, to be believed over a smaller one. */
const RELUCTANCE = 0.05;
const NOISE_FLOOR = 0.6;
/** How fast the noise of the camera is learned: up slowly, down at once. */
const NOISE_RISE = 0.02;
/** How long what moved counts as active, and by how much of the noise it must be so to count half. */
const ACTIVITY_MS = 900;
const ACTIVE_OVER_NOISE = 0.5;

export const stillMotion = (noise = NOISE_FLOOR): Motion => ({
  right: new Float32Array(WINDOWS.length),
  down: new Float32Array(WINDOWS.length),
  change: new Float32Array(WINDOWS.length),
  leftOfRight: new Float32Array(WINDOWS.length),
  leftOfDown: new Float32Array(WINDOWS.length),
  noise,
});

/** Follows one picture after another; it remembers where in the view something has moved lately. */
export class MotionWatch {
  /** Of each block, how much it differs from picture to picture, over the last second or so. */
  readonly #activity = new Float32Array(BLOCKS);
  #noise: number | null = null;
  readonly #costs = { right: new Float32Array(BLOCKS * SHIFTS), down: new Float32Array(BLOCKS * SHIFTS) };

  /** @param step milliseconds between the two */
  see(before: Picture, now: Picture, step: number): Motion {
    const camera = cameraBetween(before.halfDetail, now.halfDetail);
    const isMoved = camera.right !== 0 || camera.down !== 0;
    const from = isMoved ? shifted(before.halfDetail, camera.right / 2, camera.down / 2) : before.halfDetail;
    blockCosts(from, now.halfDetail, this.#costs.right, this.#costs.down);
    const still = new Float32Array(BLOCKS);
    for (let block = 0; block < BLOCKS; block++) still[block] = this.#costs.right[block * SHIFTS + REACH] ?? 0;
    const noise = this.#learnNoise(still);
    const part = Math.min(1, step / ACTIVITY_MS);
    const weights = new Float32Array(BLOCKS);
    for (let block = 0; block < BLOCKS; block++) {
      const over = Math.max(0, (still[block] ?? 0) / BLOCK_SIZE ** 2 - noise);
      const activity = (this.#activity[block] ?? 0) + part * (over - (this.#activity[block] ?? 0));
      this.#activity[block] = activity;
      weights[block] = activity / (activity + ACTIVE_OVER_NOISE * noise);
    }
    return windowMotions(this.#costs, weights, noise);
  }

  #learnNoise(still: Float32Array): number {
    const sorted = still.slice().sort();
    const noise = Math.max(NOISE_FLOOR, (sorted[BLOCKS >> 2] ?? 0) / BLOCK_SIZE ** 2);
    this.#noise = this.#noise === null ? noise : Math.min(noise, this.#noise + NOISE_RISE * (noise - this.#noise));
    return this.#noise;
  }
}

function windowMotions(
  costs: { readonly right: Float32Array; readonly down: Float32Array },
  weights: Float32Array,
  noise: number,
): Motion {
  const count = WINDOWS.length;
  const made = stillMotion(noise);
  const weight = new Float32Array(count);
  const table = new Float32Array((COLUMNS + 1) * (ROWS + 1));
  sumWindows(table, (block) => weights[block] ?? 0, weight, 0, 1);
  const sums = new Float32Array(count * SHIFTS);
  for (const axis of ['right', 'down'] as const) {
    const cost = costs[axis];
    for (let shift = 0; shift < SHIFTS; shift++)
      sumWindows(table, (block) => (weights[block] ?? 0) * (cost[block * SHIFTS + shift] ?? 0), sums, shift, SHIFTS);
    const left = axis === 'right' ? made.leftOfRight : made.leftOfDown;
    for (let window = 0; window < count; window++) {
      const floor = (weight[window] ?? 0) * noise * BLOCK_SIZE ** 2;
      const at = window * SHIFTS;
      const rest = sums[at + REACH] ?? 0;
      made.change[window] = Math.max(0, rest - floor);
      let best = REACH;
      let least = rest;
      for (let shift = 0; shift < SHIFTS; shift++) {
        const sum = (sums[at + shift] ?? 0) + RELUCTANCE * floor * Math.abs(shift - REACH);
        if (sum < least) [least, best] = [sum, shift];
      }
      const cost = sums[at + best] ?? 0;
      left[window] = Math.max(0, cost - floor);
      if (rest <= floor * 1.05) continue;
      const beside =
        best === 0 || best === SHIFTS - 1 ? 0 : between(cost, sums[at + best - 1] ?? 0, sums[at + best + 1] ?? 0);
      made[axis][window] = 2 * (best - REACH + beside);
    }
  }
  return made;
}

/** The sum over each window of a value of each block, by a table of sums. */
function sumWindows(
  table: Float32Array,
  valueOf: (block: number) => number,
  to: Float32Array,
  offset: number,
  stride: number,
): void {
  const width = COLUMNS + 1;
  for (let row = 0; row < ROWS; row++) {
    let along = 0;
    for (let column = 0; column < COLUMNS; column++) {
      along += valueOf(row * COLUMNS + column);
      table[(row + 1) * width + column + 1] = (table[row * width + column + 1] ?? 0) + along;
    }
  }
  WINDOWS.forEach(({ column, row, size }, i) => {
    const [top, bottom] = [row * width, (row + size) * width];
    to[i * stride + offset] =
      (table[bottom + column + size] ?? 0) -
      (table[bottom + column] ?? 0) -
      (table[top + column + size] ?? 0) +
      (table[top + column] ?? 0);
  });
}

/** Of each block, how it differs from what lay so far to the left of it before, or above it; the edge goes on outside. */
function blockCosts(before: Float32Array, now: Float32Array, right: Float32Array, down: Float32Array): void {
  right.fill(0);
  down.fill(0);
  const padded = new Float32Array(HALF_WIDTH + 2 * REACH);
  for (let y = 0; y < HALF_HEIGHT; y++) {
    const line = y * HALF_WIDTH;
    for (let x = 0; x < padded.length; x++)
      padded[x] = before[line + Math.min(HALF_WIDTH - 1, Math.max(0, x - REACH))] ?? 0;
    const row = Math.floor(y / BLOCK_SIZE) * COLUMNS;
    for (let column = 0; column < COLUMNS; column++) {
      const x = column * BLOCK_SIZE;
      const [a, b, c, d] = [now[line + x] ?? 0, now[line + x + 1] ?? 0, now[line + x + 2] ?? 0, now[line + x + 3] ?? 0];
      const to = (row + column) * SHIFTS;
      for (let shift = 0; shift < SHIFTS; shift++) {
        const at = x + 2 * REACH - shift;
        right[to + shift] =
          (right[to + shift] ?? 0) +
          Math.abs(a - (padded[at] ?? 0)) +
          Math.abs(b - (padded[at + 1] ?? 0)) +
          Math.abs(c - (padded[at + 2] ?? 0)) +
          Math.abs(d - (padded[at + 3] ?? 0));
        const from = Math.min(HALF_HEIGHT - 1, Math.max(0, y + REACH - shift)) * HALF_WIDTH + x;
        down[to + shift] =
          (down[to + shift] ?? 0) +
          Math.abs(a - (before[from] ?? 0)) +
          Math.abs(b - (before[from + 1] ?? 0)) +
          Math.abs(c - (before[from + 2] ?? 0)) +
          Math.abs(d - (before[from + 3] ?? 0));
      }
    }
  }
}
