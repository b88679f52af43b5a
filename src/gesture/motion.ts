/**
 * How far each block of the picture has moved since the picture before, by block matching on detail, coarse to fine.
 * What the whole picture does alike is the camera's own motion, and is taken off. Pure.
 */
import { CELL_COLUMNS, CELL_ROWS, HALF_HEIGHT, HALF_WIDTH, type Picture } from './picture.ts';

/** Blocks of 8 × 8 pixels of the frame. */
export const BLOCK = 8;
export const COLUMNS = 20;
export const ROWS = 15;
export const BLOCKS = COLUMNS * ROWS;

/** Of each block, in pixels of the frame since the picture before: to the right, and down. */
export interface Motion {
  readonly right: Float32Array;
  readonly down: Float32Array;
  /** How each block differed before it was matched and after, less noise: what is left was covered or came to light. */
  readonly change: Float32Array;
  readonly left: Float32Array;
  /** The camera's own motion, already taken off. */
  readonly camera: Camera;
}

export interface Camera {
  readonly right: number;
  readonly down: number;
}

/** Pixels of half size that are compared around a block: 8 × 8, twice the block. */
const WINDOW = 8;
/** Cells that are compared, and how far: up to 4 cells, 16 pixels of the frame each way. */
const CELL_WINDOW = 5;
const REACH = 4;
/** Less detail than this much noise, and nothing can be matched. */
const TEXTURE_OVER_NOISE = 1.6;
/** A match that explains less of the change than this is none: something was covered or came to light. */
const EXPLAINED = 0.75;
/** What a pixel of displacement must save, as a part of the noise, to be believed over a smaller one. */
const RELUCTANCE = 0.12;
/** Smaller steps are noise. */
const LEAST_STEP = 0.3;
/** Where so many blocks with detail stand still, the camera does. */
const STILL_PART = 0.3;
const NOISE_FLOOR = 0.6;

export const STILL: Motion = {
  right: new Float32Array(BLOCKS),
  down: new Float32Array(BLOCKS),
  change: new Float32Array(BLOCKS),
  left: new Float32Array(BLOCKS),
  camera: { right: 0, down: 0 },
};

/**
 * @param noise mean difference of two pictures of a still scene, on the log scale at half size; see `noiseBetween`
 */
export function motionBetween(before: Picture, now: Picture, noise: number): Motion {
  const right = new Float32Array(BLOCKS);
  const down = new Float32Array(BLOCKS);
  const change = new Float32Array(BLOCKS);
  const left = new Float32Array(BLOCKS);
  const hasDetail = new Uint8Array(BLOCKS);
  const floor = noise * WINDOW * WINDOW;
  for (let row = 0; row < ROWS; row++) {
    for (let column = 0; column < COLUMNS; column++) {
      const block = row * COLUMNS + column;
      const found = matchBlock(before, now, column, row, noise);
      if (!found) continue;
      change[block] = Math.max(0, found.before - floor);
      left[block] = Math.max(0, found.after - floor);
      if (!found.isMatch) continue;
      hasDetail[block] = 1;
      right[block] = found.right;
      down[block] = found.down;
    }
  }
  const camera = { right: common(right, hasDetail), down: common(down, hasDetail) };
  for (let block = 0; block < BLOCKS; block++) {
    right[block] = hasDetail[block] ? settled((right[block] ?? 0) - camera.right) : 0;
    down[block] = hasDetail[block] ? settled((down[block] ?? 0) - camera.down) : 0;
  }
  return { right, down, change, left, camera };
}

const settled = (step: number): number => (Math.abs(step) < LEAST_STEP ? 0 : step);

/** What most blocks do alike: the median, and nothing where enough of them stand still. */
function common(steps: Float32Array, hasDetail: Uint8Array): number {
  const known = steps.filter((_, block) => hasDetail[block] === 1).sort();
  if (known.length === 0) return 0;
  const still = known.reduce((count, step) => count + (Math.abs(step) < LEAST_STEP ? 1 : 0), 0);
  return still >= STILL_PART * known.length ? 0 : (known[known.length >> 1] ?? 0);
}

/** The mean difference of the quarter of blocks that differ least: what a still scene differs by. */
export function noiseBetween(before: Picture, now: Picture): number {
  const differences = new Float32Array(BLOCKS);
  for (let block = 0; block < BLOCKS; block++) {
    const at = windowAt(block % COLUMNS, Math.floor(block / COLUMNS));
    differences[block] = halfDifference(before, now, at, 0, 0) / (WINDOW * WINDOW);
  }
  differences.sort();
  return Math.max(NOISE_FLOOR, differences[BLOCKS >> 2] ?? 0);
}

interface Place {
  readonly x: number;
  readonly y: number;
}

/** The top left of what is compared around a block, kept inside the picture. */
const windowAt = (column: number, row: number): Place => ({
  x: Math.min(HALF_WIDTH - WINDOW, Math.max(0, column * 4 - 2)),
  y: Math.min(HALF_HEIGHT - WINDOW, Math.max(0, row * 4 - 2)),
});

interface Match {
  readonly right: number;
  readonly down: number;
  /** Differences without the displacement, and with it. */
  readonly before: number;
  readonly after: number;
  /** Whether something like it was found. */
  readonly isMatch: boolean;
}

/** null where the block has no detail to match. */
function matchBlock(before: Picture, now: Picture, column: number, row: number, noise: number): Match | null {
  const at = windowAt(column, row);
  const size = WINDOW * WINDOW;
  if (Math.max(textureAt(now, at), textureAt(before, at)) < TEXTURE_OVER_NOISE * noise * size) return null;
  const atRest = halfDifference(before, now, at, 0, 0);
  if (atRest < 1.35 * noise * size) return { right: 0, down: 0, before: 0, after: 0, isMatch: true };
  const price = RELUCTANCE * noise * size;
  const coarse = coarseMatch(before, now, column, row, noise);
  let best = atRest;
  let [bestX, bestY] = [0, 0];
  for (const [fromX, fromY] of [
    [0, 0],
    [2 * coarse.x, 2 * coarse.y],
  ] as const) {
    for (let y = fromY - 1; y <= fromY + 1; y++) {
      for (let x = fromX - 1; x <= fromX + 1; x++) {
        const cost = halfDifference(before, now, at, x, y) + price * (Math.abs(x) + Math.abs(y));
        if (cost < best) [best, bestX, bestY] = [cost, x, y];
      }
    }
  }
  const cost = halfDifference(before, now, at, bestX, bestY);
  if (cost > EXPLAINED * atRest && cost > 2 * noise * size)
    return { right: 0, down: 0, before: atRest, after: cost, isMatch: false };
  const across = between(
    cost,
    halfDifference(before, now, at, bestX - 1, bestY),
    halfDifference(before, now, at, bestX + 1, bestY),
  );
  const along = between(
    cost,
    halfDifference(before, now, at, bestX, bestY - 1),
    halfDifference(before, now, at, bestX, bestY + 1),
  );
  return { right: 2 * (bestX + across), down: 2 * (bestY + along), before: atRest, after: cost, isMatch: true };
}

/** Where between the pixels the least difference lies: of two straight lines of the same slope through three of them. */
function between(here: number, less: number, more: number): number {
  const slope = Math.max(less, more) - here;
  return slope <= 0 || !Number.isFinite(slope) ? 0 : Math.max(-0.5, Math.min(0.5, (less - more) / (2 * slope)));
}

function textureAt({ halfDetail }: Picture, { x, y }: Place): number {
  let sum = 0;
  for (let j = 0; j < WINDOW; j++) {
    const at = (y + j) * HALF_WIDTH + x;
    for (let i = 0; i < WINDOW; i++) sum += Math.abs(halfDetail[at + i] ?? 0);
  }
  return sum;
}

/** How the window now differs from the window before that lies (−dx, −dy) from it. Outside the picture: very much. */
function halfDifference(before: Picture, now: Picture, { x, y }: Place, dx: number, dy: number): number {
  const [fromX, fromY] = [x - dx, y - dy];
  if (fromX < 0 || fromY < 0 || fromX + WINDOW > HALF_WIDTH || fromY + WINDOW > HALF_HEIGHT) return Infinity;
  const [a, b] = [before.halfDetail, now.halfDetail];
  let sum = 0;
  for (let j = 0; j < WINDOW; j++) {
    const from = (fromY + j) * HALF_WIDTH + fromX;
    const to = (y + j) * HALF_WIDTH + x;
    for (let i = 0; i < WINDOW; i++) sum += Math.abs((b[to + i] ?? 0) - (a[from + i] ?? 0));
  }
  return sum;
}

function coarseMatch(before: Picture, now: Picture, column: number, row: number, noise: number): Place {
  const x = Math.min(CELL_COLUMNS - CELL_WINDOW, Math.max(0, column * 2 - 2));
  const y = Math.min(CELL_ROWS - CELL_WINDOW, Math.max(0, row * 2 - 2));
  const [a, b] = [before.cellDetail, now.cellDetail];
  const price = RELUCTANCE * noise * CELL_WINDOW * CELL_WINDOW;
  let best = Infinity;
  let [bestX, bestY] = [0, 0];
  for (let dy = Math.max(-REACH, y + CELL_WINDOW - CELL_ROWS); dy <= Math.min(REACH, y); dy++) {
    for (let dx = Math.max(-REACH, x + CELL_WINDOW - CELL_COLUMNS); dx <= Math.min(REACH, x); dx++) {
      let cost = price * (Math.abs(dx) + Math.abs(dy));
      for (let j = 0; j < CELL_WINDOW && cost < best; j++) {
        const from = (y - dy + j) * CELL_COLUMNS + x - dx;
        const to = (y + j) * CELL_COLUMNS + x;
        for (let i = 0; i < CELL_WINDOW; i++) cost += Math.abs((b[to + i] ?? 0) - (a[from + i] ?? 0));
      }
      if (cost < best) [best, bestX, bestY] = [cost, dx, dy];
    }
  }
  return { x: bestX, y: bestY };
}
