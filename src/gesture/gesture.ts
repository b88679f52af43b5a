/** What can be said with the head, an elbow or a sleeve, and what keeps the camera from seeing it. */

/**
 * `nod`: down and up, twice or more. `shake`: the head from side to side. `wave right`, `wave left`: something large
 * passes across the whole view, towards the mechanic's own right or left. `cover`: the lens is held shut.
 */
export type GestureKind = 'nod' | 'shake' | 'wave right' | 'wave left' | 'cover';

export interface Gesture {
  readonly kind: GestureKind;
  /**
   * 0 to 1. Of a nod, a shake or a wave by odds that were weighed on drawn films, and that no real person has tried; of a
   * covered lens how far it is inside its bounds.
   */
  readonly confidence: number;
  /** Milliseconds on the clock of the frames. */
  readonly from: number;
  readonly to: number;
  /** What was seen, in words. */
  readonly why: string;
}

/**
 * Why hardly any gesture is to be expected now. `covered`: the lens is shut or pressed against something. `black`: no light.
 * `frozen`: the same picture again and again. `slow`: too few frames a second to tell a nod from a jump; a cover is
 * told all the same.
 */
export type Trouble = 'covered' | 'black' | 'frozen' | 'slow';

/** How far a value is inside its bounds, as a number from 0 (on or beyond a bound) to 1 (at `good` or better). */
export const margin = (value: number, bound: number, good: number): number =>
  Math.min(1, Math.max(0, (value - bound) / (good - bound)));
