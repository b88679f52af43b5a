/** What goes along with the motion of a window around it: a head is wide and high, a swung wrench is neither. Pure. */
import { PLACE_COLUMNS, PLACE_ROWS, type Places } from './head-places.ts';
import type { Window } from './windows.ts';

export interface Support {
  /** Small places in and around that go along. */
  readonly area: number;
  /** Their part of all motion around. */
  readonly follow: number;
  /** The part of the small places inside that go along. */
  readonly fill: number;
  /** The part of the small places around, but not inside, that are still. */
  readonly stillAround: number;
}

/** Least likeness of a place's motion to the common one. */
const LIKENESS = 0.6;
/** Less than this part of the common motion's power is stillness. */
const STILL = 0.1;
/** How far around the window is looked, in blocks. */
const AROUND = 2;

/** What goes with the common motion of the window in and around it, and how much goes otherwise. */
export function supportOf(window: Window, places: Places): Support {
  const [left, right] = [Math.max(0, window.column - AROUND - 1), window.column + window.size + AROUND];
  const [top, bottom] = [Math.max(0, window.row - AROUND - 1), window.row + window.size + AROUND];
  const isInside = (from: number, low: number): boolean => from >= low && from + 2 <= low + window.size;
  let [area, followed, foreign, inside, filled, around, still] = [0, 0, 0, 0, 0, 0, 0];
  for (let row = top; row < Math.min(bottom, PLACE_ROWS); row++) {
    for (let column = left; column < Math.min(right, PLACE_COLUMNS); column++) {
      const { power, likeness } = places.at(column, row);
      const isIn = isInside(column, window.column) && isInside(row, window.row);
      if (isIn) inside += 1;
      else around += 1;
      if (!isIn && power < STILL) still += 1;
      if (power === 0) continue;
      if (likeness < LIKENESS) {
        foreign += power;
        continue;
      }
      followed += power;
      area += 1;
      if (isIn) filled += 1;
    }
  }
  return {
    area,
    follow: followed + foreign > 0 ? followed / (followed + foreign) : 0,
    fill: filled / Math.max(1, inside),
    stillAround: still / Math.max(1, around),
  };
}
