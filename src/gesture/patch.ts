/** A patch of neighbouring blocks that move alike: a head, or what may be taken for one. Pure. */
import type { Axis, Step } from './history.ts';
import { BLOCK, BLOCKS, COLUMNS, ROWS } from './motion.ts';

export interface Patch {
  readonly blocks: readonly number[];
  /** How much each counts, in the order of the blocks. */
  readonly weights: readonly number[];
  /** Pixels from edge to edge. */
  readonly width: number;
  readonly height: number;
}

/** Blocks with less than this part of the greatest value are not of a patch. */
const PART_OF_GREATEST = 0.3;
const LEAST_BLOCKS = 4;

/**
 * Patches of high values, the greatest sum first.
 * @param least values below are never part of one
 */
export function patchesOf(values: Float32Array, least: number, most: number): readonly Patch[] {
  const smooth = smoothed(values);
  const open = new Uint8Array(BLOCKS);
  const greatest = smooth.reduce((high, value) => Math.max(high, value), 0);
  const bound = Math.max(least, PART_OF_GREATEST * greatest);
  for (let block = 0; block < BLOCKS; block++) open[block] = (smooth[block] ?? 0) >= bound ? 1 : 0;
  const patches: { readonly sum: number; readonly patch: Patch }[] = [];
  for (let block = 0; block < BLOCKS; block++) {
    if (!open[block]) continue;
    const blocks = floodFrom(block, open);
    if (blocks.length < LEAST_BLOCKS) continue;
    const weights = blocks.map((member) => smooth[member] ?? 0);
    patches.push({ sum: weights.reduce((sum, weight) => sum + weight, 0), patch: patchFrom(blocks, weights) });
  }
  return patches
    .sort((a, b) => b.sum - a.sum)
    .slice(0, most)
    .map(({ patch }) => patch);
}

export function patchFrom(blocks: readonly number[], weights: readonly number[]): Patch {
  const columns = blocks.map((block) => block % COLUMNS);
  const rows = blocks.map((block) => Math.floor(block / COLUMNS));
  return {
    blocks,
    weights,
    // What is compared for a block reaches half a block beyond it on each side.
    width: (Math.max(...columns) - Math.min(...columns) + 2) * BLOCK,
    height: (Math.max(...rows) - Math.min(...rows) + 2) * BLOCK,
  };
}

/** Takes a block and all that hang together with it, corners too. */
function floodFrom(start: number, open: Uint8Array): readonly number[] {
  const found = [start];
  open[start] = 0;
  for (const block of found) {
    const [column, row] = [block % COLUMNS, Math.floor(block / COLUMNS)];
    for (let y = Math.max(0, row - 1); y <= Math.min(ROWS - 1, row + 1); y++) {
      for (let x = Math.max(0, column - 1); x <= Math.min(COLUMNS - 1, column + 1); x++) {
        const next = y * COLUMNS + x;
        if (!open[next]) continue;
        open[next] = 0;
        found.push(next);
      }
    }
  }
  return found;
}

/** The mean with the neighbours, the block itself counting four times. */
function smoothed(values: Float32Array): Float32Array {
  return values.map((value, block) => {
    const [column, row] = [block % COLUMNS, Math.floor(block / COLUMNS)];
    let [sum, count] = [4 * value, 4];
    if (column > 0) [sum, count] = [sum + (values[block - 1] ?? 0), count + 1];
    if (column < COLUMNS - 1) [sum, count] = [sum + (values[block + 1] ?? 0), count + 1];
    if (row > 0) [sum, count] = [sum + (values[block - COLUMNS] ?? 0), count + 1];
    if (row < ROWS - 1) [sum, count] = [sum + (values[block + COLUMNS] ?? 0), count + 1];
    return sum / count;
  });
}

/** The mean motion of the patch in each step, in pixels. */
export function motionOf({ blocks, weights }: Patch, steps: readonly Step[], axis: Axis): Float32Array {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return Float32Array.from(steps, ({ motion }) => {
    const moved = motion[axis];
    let sum = 0;
    for (let i = 0; i < blocks.length; i++) sum += (weights[i] ?? 0) * (moved[blocks[i] ?? 0] ?? 0);
    return sum / total;
  });
}

export interface Together {
  /** The blocks that follow the common motion. */
  readonly patch: Patch | null;
  /** The part of all motion of the patch that is the common one, 0 to 1: a head's is high, a swung wrench's is low. */
  readonly part: number;
}

/** Least likeness (cosine) of a block's motion to the common one. */
const LIKENESS = 0.5;

/** Of the motion of the patch along the axis, which part its blocks do together, and which blocks those are. */
export function togetherIn(
  { blocks, weights }: Patch,
  steps: readonly Step[],
  axis: Axis,
  common: Float32Array,
): Together {
  const commonPower = common.reduce((sum, by) => sum + by * by, 0);
  if (commonPower === 0) return { patch: null, part: 0 };
  let [explained, all] = [0, 0];
  const kept: number[] = [];
  const keptWeights: number[] = [];
  blocks.forEach((block, i) => {
    let [power, shared] = [0, 0];
    steps.forEach(({ motion }, at) => {
      const by = motion[axis][block] ?? 0;
      power += by * by;
      shared += by * (common[at] ?? 0);
    });
    if (power === 0) return;
    all += power;
    if (shared > 0) explained += shared ** 2 / commonPower;
    if (shared < LIKENESS * Math.sqrt(power * commonPower)) return;
    kept.push(block);
    keptWeights.push(weights[i] ?? 0);
  });
  return {
    patch: kept.length < LEAST_BLOCKS ? null : patchFrom(kept, keptWeights),
    part: all > 0 ? explained / all : 0,
  };
}
