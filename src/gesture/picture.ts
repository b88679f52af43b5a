/**
 * A frame made ready: half and quarter size, on a logarithmic scale, so that light that doubles everywhere adds the
 * same everywhere; and its detail, which is what stands out from its surroundings, so that this constant, a slow
 * shadow and the bands of a flickering lamp fall away. Pure.
 */
import { HEIGHT, WIDTH, type Frame } from './frame.ts';

export const HALF_WIDTH = WIDTH / 2;
export const HALF_HEIGHT = HEIGHT / 2;
export const CELL_COLUMNS = WIDTH / 4;
export const CELL_ROWS = HEIGHT / 4;

export interface Picture {
  /** What stands out at half size, log scale. */
  readonly halfDetail: Float32Array;
  /** The picture itself at quarter size, log scale: one value for a cell of 4 × 4 pixels. */
  readonly cells: Float32Array;
  readonly cellDetail: Float32Array;
  /** Mean grey value, 0 to 255. */
  readonly mean: number;
}

/** Below this, grey values are mostly noise: the logarithm is flat there. */
const DARK = 24;
/** Steps of the log scale in a change of light by the factor e. */
const LOG_UNIT = 64;

/** By the sum of four grey values. */
const LOG = Float32Array.from({ length: 4 * 255 + 1 }, (_, sum) => LOG_UNIT * Math.log(1 + sum / 4 / DARK));

/** Radii of the surroundings, in pixels of their size: 10 to 12 pixels of the frame. */
const HALF_RADIUS = 5;
const CELL_RADIUS = 3;

/** @param upsideDown whether the camera hangs head down: the picture is turned by 180° first */
export function pictureOf({ luma }: Frame, upsideDown: boolean): Picture {
  const half = new Float32Array(HALF_WIDTH * HALF_HEIGHT);
  let total = 0;
  for (let y = 0; y < HALF_HEIGHT; y++) {
    for (let x = 0; x < HALF_WIDTH; x++) {
      const at = 2 * y * WIDTH + 2 * x;
      const sum = (luma[at] ?? 0) + (luma[at + 1] ?? 0) + (luma[at + WIDTH] ?? 0) + (luma[at + WIDTH + 1] ?? 0);
      total += sum;
      half[y * HALF_WIDTH + x] = LOG[sum] ?? 0;
    }
  }
  if (upsideDown) half.reverse();
  const cells = new Float32Array(CELL_COLUMNS * CELL_ROWS);
  for (let y = 0; y < CELL_ROWS; y++) {
    for (let x = 0; x < CELL_COLUMNS; x++) {
      const at = 2 * y * HALF_WIDTH + 2 * x;
      const sum =
        (half[at] ?? 0) + (half[at + 1] ?? 0) + (half[at + HALF_WIDTH] ?? 0) + (half[at + HALF_WIDTH + 1] ?? 0);
      cells[y * CELL_COLUMNS + x] = sum / 4;
    }
  }
  return {
    halfDetail: detailOf(half, HALF_WIDTH, HALF_HEIGHT, HALF_RADIUS),
    cells,
    cellDetail: detailOf(cells, CELL_COLUMNS, CELL_ROWS, CELL_RADIUS),
    mean: total / (WIDTH * HEIGHT),
  };
}

/** Each value less the mean of its surroundings, which are cut off at the edge of the picture. */
function detailOf(values: Float32Array, width: number, height: number, radius: number): Float32Array {
  const rows = new Float32Array(values.length);
  for (let y = 0; y < height; y++) boxAlong(values, rows, y * width, 1, width, radius);
  const mean = new Float32Array(values.length);
  for (let x = 0; x < width; x++) boxAlong(rows, mean, x, width, height, radius);
  for (let i = 0; i < values.length; i++) mean[i] = (values[i] ?? 0) - (mean[i] ?? 0);
  return mean;
}

/** The running mean along one row or column. */
function boxAlong(from: Float32Array, to: Float32Array, start: number, step: number, length: number, radius: number) {
  let sum = 0;
  for (let i = 0; i < radius; i++) sum += from[start + i * step] ?? 0;
  for (let i = 0; i < length; i++) {
    if (i + radius < length) sum += from[start + (i + radius) * step] ?? 0;
    if (i - radius > 0) sum -= from[start + (i - radius - 1) * step] ?? 0;
    to[start + i * step] = sum / (Math.min(length - 1, i + radius) - Math.max(0, i - radius) + 1);
  }
}
