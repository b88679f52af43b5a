/** What goes along with the motion of a window around it: a head is wide and high, a swung wrench is neither. Pure. */
import type { Axis, Step } from './history.ts';
import { WINDOWS } from './windows.ts';

export interface Support {
  /** Small windows in and around that go along. */
  readonly area: number;
  /** Their part of all motion around. */
  readonly follow: number;
  /** The part of the small windows inside that go along. */
  readonly fill: number;
  /** The part of the small windows around, but not inside, that are still. */
  readonly stillAround: number;
}

/** Least likeness (cosine) of a small window's motion to the common one. */
const LIKENESS = 0.6;
/** Less than this part of the common motion's power is stillness. */
const STILL = 0.1;
const SMALL = WINDOWS.flatMap(({ size }, index) => (size === 2 ? [index] : []));

/** How far around the window is looked, in blocks. */
const AROUND = 2;

const NONE: Support = { area: 0, follow: 0, fill: 0, stillAround: 0 };

/** What goes with the common motion of the window in and around it, and how much goes otherwise. */
export function supportOf(window: number, during: readonly Step[], axis: Axis, common: Float32Array): Support {
  const here = WINDOWS[window];
  if (!here) return NONE;
  const commonPower = common.reduce((sum, by) => sum + by * by, 0);
  const rows = during.map(({ motion }) => motion[axis]);
  const isNear = (from: number, low: number): boolean => from + 1 >= low - AROUND && from < low + here.size + AROUND;
  const isInside = (from: number, low: number): boolean => from >= low && from + 2 <= low + here.size;
  let [area, followed, foreign, inside, filled, around, still] = [0, 0, 0, 0, 0, 0, 0];
  for (const index of SMALL) {
    const small = WINDOWS[index];
    if (!small || !isNear(small.column, here.column) || !isNear(small.row, here.row)) continue;
    let [power, shared] = [0, 0];
    for (let i = 0; i < rows.length; i++) {
      const by = rows[i]?.[index] ?? 0;
      power += by * by;
      shared += by * (common[i] ?? 0);
    }
    const isStill = power < STILL * commonPower;
    const isIn = isInside(small.column, here.column) && isInside(small.row, here.row);
    if (isIn) inside += 1;
    else around += 1;
    if (!isIn && isStill) still += 1;
    if (power === 0) continue;
    if (shared < LIKENESS * Math.sqrt(power * commonPower)) {
      foreign += power;
      continue;
    }
    followed += power;
    area += 1;
    if (isIn) filled += 1;
  }
  return {
    area,
    follow: followed + foreign > 0 ? followed / (followed + foreign) : 0,
    fill: filled / Math.max(1, inside),
    stillAround: still / Math.max(1, around),
  };
}
