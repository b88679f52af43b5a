/** Grey pictures of any size to the size that is watched. */
import { HEIGHT, middleOf, WIDTH, type Frame } from '../../gesture/frame.ts';

/** One grey value of the picture, 0 to 255, by column and row. */
export type Grey = (x: number, y: number) => number;

/**
 * Each pixel is the mean of those that fall on it; of a smaller picture, the one there. What is wider or higher than the
 * app's picture is cut off at both sides, as at the camera.
 */
export function scaled(width: number, height: number, grey: Grey): Frame {
  const luma = new Uint8ClampedArray(WIDTH * HEIGHT);
  const middle = middleOf(width, height);
  for (let y = 0; y < HEIGHT; y++) {
    const top = Math.floor(middle.top + (y * middle.height) / HEIGHT);
    const bottom = Math.max(top + 1, Math.floor(middle.top + ((y + 1) * middle.height) / HEIGHT));
    for (let x = 0; x < WIDTH; x++) {
      const left = Math.floor(middle.left + (x * middle.width) / WIDTH);
      const right = Math.max(left + 1, Math.floor(middle.left + ((x + 1) * middle.width) / WIDTH));
      let sum = 0;
      for (let j = top; j < bottom; j++) for (let i = left; i < right; i++) sum += grey(i, j);
      luma[y * WIDTH + x] = sum / ((bottom - top) * (right - left));
    }
  }
  return { width: WIDTH, height: HEIGHT, luma };
}

/** More pixels than this are no camera's: a wrong header would ask for gigabytes. */
export const MOST_PIXELS = 2 ** 24;
