/**
 * The shape of all that goes along with the motion of a window, wherever in the picture. A head is round and goes as one,
 * over shoulders that stay; what swings on a pivot goes the farther the longer it is, and an arm holds it. Pure.
 */
import { PLACE_COLUMNS, PLACE_ROWS, type Places } from './head-places.ts';
import type { Window } from './windows.ts';

export interface Shape {
  /** How far its middle lies to one side of the window's, over the size of the window; 1 where nothing goes along. */
  readonly offCentre: number;
  /** How many times as long as wide it is, natural logarithm. */
  readonly long: number;
  /** 0 where it stands or lies straight, towards 1 where it lies slantwise. */
  readonly diagonal: number;
  /** Of what its places differ by in how far they go, the parts that a slope to the side and one downwards explain, together: 0 to 1. */
  readonly sloping: number;
  /** How far it goes across the axis for each pixel along it. */
  readonly sideways: number;
  /** 1 where it reaches the lower edge of the picture. */
  readonly fromBelow: 0 | 1;
  /** How much moves below the window in the same time, however it moves, as a part of the common motion: 0 to 1. */
  readonly below: number;
}

/**
 * Least likeness to the common motion, and least part of its power, of what goes along. A little less than beside the
 * window is enough (head-support.ts): what hangs together goes less alike the farther it is.
 */
const LIKENESS = 0.55;
const POWER = 0.1;
/** How far below the window is looked, in blocks. */
const BELOW = 5;
/** The spread of one place alone, in blocks squared. */
const OWN_SPREAD = 0.3;
const LEAST_ALONG = 0.2;

/** @param window what the common motion of the places is that of */
export function shapeOf(window: Window, places: Places): Shape {
  const along = goingAlong(window, places);
  const count = Math.max(1, along.length);
  const mean = (valueOf: (at: Position) => number): number => along.reduce((sum, at) => sum + valueOf(at), 0) / count;
  const [x, y] = [mean(({ column }) => column), mean(({ row }) => row)];
  const way = mean(({ column, row }) => places.at(column, row).along);
  const aside = mean(({ column, row }) => places.at(column, row).aside);
  const wide = mean(({ column }) => (column - x) ** 2) + OWN_SPREAD;
  const high = mean(({ row }) => (row - y) ** 2) + OWN_SPREAD;
  const slant = mean(({ column, row }) => (column - x) * (row - y));
  const off = ({ column, row }: Position): number => places.at(column, row).along - way;
  const [slopeX, slopeY] = [mean((at) => (at.column - x) * off(at)), mean((at) => (at.row - y) * off(at))];
  const differing = mean((at) => off(at) ** 2);
  const [half, turn] = [(wide + high) / 2, Math.hypot((wide - high) / 2, slant)];
  return {
    offCentre: along.length === 0 ? 1 : Math.abs(x + 1 - (window.column + window.size / 2)) / window.size,
    long: Math.log((half + turn) / Math.max(0.05, half - turn)),
    diagonal: Math.abs(slant) / Math.sqrt(wide * high),
    sloping: differing > 0 ? Math.min(1, (slopeX ** 2 / wide + slopeY ** 2 / high) / differing) : 0,
    sideways: Math.abs(aside) / Math.max(LEAST_ALONG, way),
    fromBelow: along.some(({ row }) => row === PLACE_ROWS - 1) ? 1 : 0,
    below: motionBelow(window, places),
  };
}

interface Position {
  readonly column: number;
  readonly row: number;
}

/** The places inside the window that go along, and all that touch those and go along too. */
function goingAlong(window: Window, places: Places): readonly Position[] {
  const seen = new Uint8Array(PLACE_COLUMNS * PLACE_ROWS);
  const found: Position[] = [];
  const look = (column: number, row: number): void => {
    if (column < 0 || row < 0 || column >= PLACE_COLUMNS || row >= PLACE_ROWS) return;
    const at = row * PLACE_COLUMNS + column;
    if (seen[at] === 1) return;
    seen[at] = 1;
    const { power, likeness } = places.at(column, row);
    if (power > POWER && likeness >= LIKENESS) found.push({ column, row });
  };
  for (let row = window.row; row + 2 <= window.row + window.size; row++)
    for (let column = window.column; column + 2 <= window.column + window.size; column++) look(column, row);
  // It grows while it is gone through.
  for (const { column, row } of found) {
    look(column + 1, row);
    look(column - 1, row);
    look(column, row + 1);
    look(column, row - 1);
  }
  return found;
}

function motionBelow({ column, row, size }: Window, places: Places): number {
  let [sum, count] = [0, 0];
  for (let y = row + size; y < Math.min(row + size + BELOW, PLACE_ROWS); y++) {
    for (let x = Math.max(0, column - 1); x < Math.min(column + size, PLACE_COLUMNS); x++) {
      sum += Math.min(1, places.at(x, y).power);
      count += 1;
    }
  }
  return sum / Math.max(1, count);
}
