/** How each small place of the picture moved meanwhile, held against one common motion; measured when it is asked for. Pure. */
import type { Axis, Step } from './history.ts';
import { COLUMNS, ROWS, WINDOWS } from './windows.ts';

export interface Place {
  /** Of its own motion, as a part of that of the common one. */
  readonly power: number;
  /** How alike they are: cosine, −1 to 1; 0 where it is still. */
  readonly likeness: number;
  /** Pixels along the axis, and across it, for each pixel of the common motion. */
  readonly along: number;
  readonly aside: number;
}

/** Blocks each way. */
const SIZE = 2;
export const PLACE_COLUMNS = COLUMNS - SIZE + 1;
export const PLACE_ROWS = ROWS - SIZE + 1;
/** Of each place its window. */
const INDICES = new Int32Array(PLACE_COLUMNS * PLACE_ROWS);
WINDOWS.forEach(({ size, column, row }, index) => {
  if (size === SIZE) INDICES[row * PLACE_COLUMNS + column] = index;
});

export class Places {
  readonly #along: readonly Float32Array[];
  readonly #aside: readonly Float32Array[];
  readonly #common: Float32Array;
  readonly #power: number;
  readonly #known: (Place | undefined)[] = [];

  /** @param common pixels in each of the steps */
  constructor(steps: readonly Step[], axis: Axis, common: Float32Array) {
    const other = axis === 'down' ? 'right' : 'down';
    this.#along = steps.map(({ motion }) => motion[axis]);
    this.#aside = steps.map(({ motion }) => motion[other]);
    this.#common = common;
    this.#power = Math.max(
      1e-6,
      common.reduce((sum, by) => sum + by * by, 0),
    );
  }

  /** The place whose top left block this is. */
  at(column: number, row: number): Place {
    const at = row * PLACE_COLUMNS + column;
    return (this.#known[at] ??= this.#measured(INDICES[at] ?? 0));
  }

  #measured(index: number): Place {
    let [power, along, aside] = [0, 0, 0];
    for (let i = 0; i < this.#common.length; i++) {
      const common = this.#common[i] ?? 0;
      const by = this.#along[i]?.[index] ?? 0;
      power += by * by;
      along += by * common;
      aside += (this.#aside[i]?.[index] ?? 0) * common;
    }
    const all = this.#power;
    const likeness = power > 0 ? along / Math.sqrt(power * all) : 0;
    return { power: power / all, likeness, along: along / all, aside: aside / all };
  }
}
