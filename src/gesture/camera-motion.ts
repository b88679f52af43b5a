/** How a camera on a shaking bench has moved between two pictures: what the whole picture did alike. Pure. */
import { HALF_HEIGHT, HALF_WIDTH } from './picture.ts';

/** The camera's own motion, pixels of the frame. */
export interface Camera {
  readonly right: number;
  readonly down: number;
}

/** Farthest that a camera on a shaking bench moves between two pictures, pixels of half size. */
const REACH = 3;
/** Tiles that are asked about the camera, pixels of half size. */
const TILE = 10;
/** A camera motion that explains less than this part of what differs is none. */
const LEAST_GAIN = 0.03;

/**
 * The camera's own motion: the shift under which the tiles of the picture differ least. Each tile counts by the root of
 * its difference, so that a large thing that moves says less than all that stands still.
 */
export function cameraBetween(before: Float32Array, now: Float32Array): Camera {
  const size = 2 * REACH + 1;
  const totals = new Float32Array(size * size);
  for (let top = REACH; top + TILE <= HALF_HEIGHT - REACH + 1; top += TILE) {
    for (let left = REACH; left + TILE <= HALF_WIDTH - REACH + 1; left += TILE) {
      for (let s = 0; s < totals.length; s++) {
        const shift = (Math.floor(s / size) - REACH) * HALF_WIDTH + (s % size) - REACH;
        let sum = 0;
        // Every other pixel, as on a chessboard, says as much.
        for (let y = top; y < top + TILE; y++) {
          const line = y * HALF_WIDTH;
          for (let x = left + (y & 1); x < left + TILE; x += 2)
            sum += Math.abs((now[line + x] ?? 0) - (before[line + x - shift] ?? 0));
        }
        totals[s] = (totals[s] ?? 0) + Math.sqrt(sum);
      }
    }
  }
  const rest = totals[(totals.length - 1) / 2] ?? 0;
  let best = (totals.length - 1) / 2;
  for (let s = 0; s < totals.length; s++) if ((totals[s] ?? 0) < (totals[best] ?? 0)) best = s;
  const [x, y] = [best % size, Math.floor(best / size)];
  const here = totals[best] ?? 0;
  const beside = (one: number, other: number, isInside: boolean): number =>
    isInside ? between(here, totals[one] ?? 0, totals[other] ?? 0) : 0;
  const right = x - REACH + beside(best - 1, best + 1, x > 0 && x < size - 1);
  const down = y - REACH + beside(best - size, best + size, y > 0 && y < size - 1);
  const isStill =
    best === (totals.length - 1) / 2 ? Math.max(Math.abs(right), Math.abs(down)) < 0.1 : here > (1 - LEAST_GAIN) * rest;
  return isStill ? { right: 0, down: 0 } : { right: 2 * right, down: 2 * down };
}

/** The values as they would be moved by so many of their own pixels, between the pixels too. */
export function shifted(values: Float32Array, right: number, down: number): Float32Array {
  const [left, top] = [Math.floor(right), Math.floor(down)];
  const [fx, fy] = [right - left, down - top];
  const made = new Float32Array(values.length);
  for (let y = 0; y < HALF_HEIGHT; y++) {
    const lower = Math.min(HALF_HEIGHT - 1, Math.max(0, y - top)) * HALF_WIDTH;
    const upper = Math.min(HALF_HEIGHT - 1, Math.max(0, y - top - 1)) * HALF_WIDTH;
    for (let x = 0; x < HALF_WIDTH; x++) {
      const nearer = Math.min(HALF_WIDTH - 1, Math.max(0, x - left));
      const farther = Math.min(HALF_WIDTH - 1, Math.max(0, x - left - 1));
      made[y * HALF_WIDTH + x] =
        (1 - fy) * ((1 - fx) * (values[lower + nearer] ?? 0) + fx * (values[lower + farther] ?? 0)) +
        fy * ((1 - fx) * (values[upper + nearer] ?? 0) + fx * (values[upper + farther] ?? 0));
    }
  }
  return made;
}

/** Where between the pixels the least difference lies: of two straight lines of the same slope through three of them. */
export function between(here: number, less: number, more: number): number {
  const slope = Math.max(less, more) - here;
  return slope <= 0 ? 0 : Math.max(-0.5, Math.min(0.5, (less - more) / (2 * slope)));
}
