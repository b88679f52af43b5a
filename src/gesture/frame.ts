/** The door for pictures: a small grey frame with its time, as the watcher takes it. Pure. */

/** Every frame has this size: a gesture that fills a hand's width of the view needs no more. */
export const WIDTH = 160;
export const HEIGHT = 120;

/** Grey values, 0 (black) to 255, row by row from the top left. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly luma: Uint8Array | Uint8ClampedArray;
}

/** A part of the picture, as parts of its width and height from the top left, 0 to 1. */
export interface Region {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export const WHOLE: Region = { left: 0, top: 0, width: 1, height: 1 };

/** Smaller ones hold no gesture: two blocks of motion each way would be all there is. */
const LEAST_PART = 0.2;

/** @throws RangeError when the region is not inside the picture or smaller than a fifth of it either way */
export function checkRegion(region: Region): Region {
  const { left, top, width, height } = region;
  const fits = left >= 0 && top >= 0 && left + width <= 1 + 1e-9 && top + height <= 1 + 1e-9;
  if (!fits || !(width >= LEAST_PART && height >= LEAST_PART))
    throw new RangeError(
      `The region to watch (${left}, ${top}, ${width} × ${height}) does not lie in the picture; give parts of 1, at least ${LEAST_PART} wide and high.`,
    );
  return region;
}

/**
 * Why a frame cannot be looked at, in words with the mend; null where it can.
 * @param time milliseconds on the clock of the frames before
 * @param last the time of the frame before, null for the first
 */
export function frameTrouble(frame: Frame, time: number, last: number | null): string | null {
  if (frame.width !== WIDTH || frame.height !== HEIGHT)
    return `the frame is ${frame.width} × ${frame.height}; scale it to ${WIDTH} × ${HEIGHT}`;
  if (frame.luma.length !== WIDTH * HEIGHT)
    return `the frame has ${frame.luma.length} grey values; give ${WIDTH * HEIGHT}, one for each pixel`;
  if (!Number.isFinite(time)) return `the time of the frame is ${time}; give milliseconds`;
  if (last !== null && time <= last)
    return `the time of the frame, ${time} ms, is not after the one before, ${last} ms; give frames in their order`;
  return null;
}

/** The largest part of 4 : 3 about the middle: a stretched picture would have slow nods and quick waves. */
export function middleOf(width: number, height: number): { left: number; top: number; width: number; height: number } {
  const part = Math.min(width / WIDTH, height / HEIGHT);
  const [wide, high] = [part * WIDTH, part * HEIGHT];
  return { left: (width - wide) / 2, top: (height - high) / 2, width: wide, height: high };
}

/**
 * Pictures that come sooner after the last one that was looked at are passed over, in milliseconds: 15 a second tell as much
 * as 30.
 */
export const LEAST_STEP_MS = 48;
