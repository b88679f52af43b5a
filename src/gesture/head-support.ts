/** What goes along with the motion of a window around it: a head is wide and high, a swung wrench is neither. Pure. */
import type { Axis, Step } from './history.ts';
import { WINDOWS } from './windows.ts';

export interface Support {
  /** Small windows around that go along. */
  readonly area: number;
  /** Their part of all motion around. */
  readonly follow: number;
}

/** Least likeness (cosine) of a small window's motion to the common one. */
const LIKENESS = 0.6;
const SMALL = WINDOWS.flatMap(({ size }, index) => (size === 2 ? [index] : []));

/** How far around the window is looked, in blocks. */
const AROUND = 2;

/** What goes with the common motion of the window in and around it, and how much goes otherwise. */
export function supportOf(window: number, during: readonly Step[], axis: Axis, common: Float32Array): Support {
  const here = WINDOWS[window];
  if (!here) return { area: 0, follow: 0 };
  const commonPower = common.reduce((sum, by) => sum + by * by, 0);
  const isNear = (from: number, low: number): boolean => from + 1 >= low - AROUND && from < low + here.size + AROUND;
  let [area, followed, foreign] = [0, 0, 0];
  for (const index of SMALL) {
    const small = WINDOWS[index];
    if (!small || !isNear(small.column, here.column) || !isNear(small.row, here.row)) continue;
    let [power, shared] = [0, 0];
    during.forEach(({ motion }, i) => {
      const by = motion[axis][index] ?? 0;
      power += by * by;
      shared += by * (common[i] ?? 0);
    });
    if (power === 0) continue;
    if (shared < LIKENESS * Math.sqrt(power * commonPower)) {
      foreign += power;
    } else {
      followed += power;
      area += 1;
    }
  }
  return { area, follow: followed + foreign > 0 ? followed / (followed + foreign) : 0 };
}
