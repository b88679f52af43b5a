/** Which cells of the picture have changed, whatever the light as a whole did meanwhile. Pure. */
import { CELL_COLUMNS, CELL_ROWS } from './picture.ts';

export const CELLS = CELL_COLUMNS * CELL_ROWS;

/** Steps of the log scale, 6 % more or less light: less is noise in the dark. */
const LEAST_CHANGE = 4;
const OVER_NOISE = 5;
/** The bands of a flickering lamp go no further than this. A row that changes more holds something new. */
const MOST_BAND = 8;

/**
 * 1 for each cell that differs. What most of the picture did alike is light, and what most of a row did alike is a band
 * of flicker; a camera that shakes makes every edge differ, so that the bound rises with the usual difference.
 */
export function changedCells(before: Float32Array, now: Float32Array): Uint8Array {
  const differences = new Float32Array(CELLS);
  for (let i = 0; i < CELLS; i++) differences[i] = (now[i] ?? 0) - (before[i] ?? 0);
  const light = median(differences);
  for (let row = 0; row < CELL_ROWS; row++) {
    const cells = differences.subarray(row * CELL_COLUMNS, (row + 1) * CELL_COLUMNS);
    for (let i = 0; i < CELL_COLUMNS; i++) cells[i] = (cells[i] ?? 0) - light;
    const band = median(cells);
    if (Math.abs(band) <= MOST_BAND) for (let i = 0; i < CELL_COLUMNS; i++) cells[i] = (cells[i] ?? 0) - band;
  }
  const bound = Math.max(LEAST_CHANGE, OVER_NOISE * median(differences.map(Math.abs)));
  return Uint8Array.from(differences, (difference) => (Math.abs(difference) > bound ? 1 : 0));
}

/** The cells as they would be with the camera moved by so many pixels of the frame. */
export function movedCells(cells: Float32Array, right: number, down: number): Float32Array {
  const [dx, dy] = [right / 4, down / 4];
  const [left, top] = [Math.floor(dx), Math.floor(dy)];
  const [fx, fy] = [dx - left, dy - top];
  const at = (x: number, y: number): number => {
    const [column, row] = [Math.min(CELL_COLUMNS - 1, Math.max(0, x)), Math.min(CELL_ROWS - 1, Math.max(0, y))];
    return cells[row * CELL_COLUMNS + column] ?? 0;
  };
  return cells.map((_, cell) => {
    const [x, y] = [(cell % CELL_COLUMNS) - left, Math.floor(cell / CELL_COLUMNS) - top];
    return (
      (1 - fy) * ((1 - fx) * at(x, y) + fx * at(x - 1, y)) + fy * ((1 - fx) * at(x, y - 1) + fx * at(x - 1, y - 1))
    );
  });
}

const median = (values: Float32Array): number => values.slice().sort()[values.length >> 1] ?? 0;
