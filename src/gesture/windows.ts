/** Where motion is looked for: overlapping square windows of several sizes, made up of blocks. Pure. */
import { HEIGHT, WIDTH, type Region } from './frame.ts';

/** A block, pixels of half size: 8 of the frame. */
export const BLOCK_SIZE = 4;
export const BLOCK = 2 * BLOCK_SIZE;
export const COLUMNS = WIDTH / BLOCK;
export const ROWS = HEIGHT / BLOCK;
export const BLOCKS = COLUMNS * ROWS;

export interface Window {
  /** In blocks, from the top left. */
  readonly column: number;
  readonly row: number;
  readonly size: number;
}

/** From a head far off to one that fills the view, in blocks. */
const SIZES = [2, 3, 4, 6, 8];

export const WINDOWS: readonly Window[] = SIZES.flatMap((size) => {
  const step = size >= 6 ? 2 : 1;
  const places = (length: number): readonly number[] =>
    Array.from({ length: Math.floor((length - size) / step) + 1 }, (_, i) => i * step);
  return places(ROWS).flatMap((row) => places(COLUMNS).map((column) => ({ column, row, size })));
});

/** 1 for each window whose middle lies in the region. */
export function windowsIn({ left, top, width, height }: Region): Uint8Array {
  return Uint8Array.from(WINDOWS, ({ column, row, size }) => {
    const [x, y] = [(column + size / 2) / COLUMNS, (row + size / 2) / ROWS];
    return x > left && x < left + width && y > top && y < top + height ? 1 : 0;
  });
}
