/**
 * A wave: something large passes across the view, from one side to the other, and is gone. What counts is when each
 * column of the picture changed: one after another, all of them, within a second, and the picture is then as before.
 * Who walks by is slower; what swings there and back leaves no order; who leans in stays. Pure.
 */
import { changedCells, CELLS, movedCells } from './change.ts';
import type { Region } from './frame.ts';
import type { Camera } from './motion.ts';
import { busyPassage, linePassage, type Change, type Passage } from './passage.ts';
import { margin, type Gesture } from './gesture.ts';
import { CELL_COLUMNS, CELL_ROWS } from './picture.ts';

const KEPT_MS = 2600;
const MOST_STEPS = 56;
/** A column has changed where so much of its height has. */
const TALL_PART = 0.2;
/** The view is quiet while no more of its columns change. */
const QUIET_PART = 0.25;
const QUIET_AFTER_MS = 110;
/** What was not told by then is not told any more. */
const LATE_MS = 450;
const QUIET_BEFORE_MS = 130;
const LONGEST_MS = 1500;
/** Time for the whole width. Who walks by close behind takes longer. */
const CROSSING_MS = { least: 90, most: 1000 };

/** Part of the picture that is as it was before. */
const RESTORED_PART = 0.65;
const LEAST_CONFIDENCE = 0.2;

interface Seen {
  readonly from: number;
  readonly to: number;
  readonly cells: Float32Array;
  /** Of each column, the part of its watched height that changed. */
  readonly changed: Float32Array;
  readonly activePart: number;
}

export interface Watched {
  readonly region: Region;
  /** Whether the picture is as in a mirror: the mechanic's right is then its right. */
  readonly mirrored: boolean;
}

export class WaveWatch {
  #seen: Seen[] = [];
  readonly #mirrored: boolean;
  readonly #columns: { readonly from: number; readonly to: number };
  readonly #rows: { readonly from: number; readonly to: number };

  constructor({ region, mirrored }: Watched) {
    this.#mirrored = mirrored;
    this.#columns = {
      from: Math.round(region.left * CELL_COLUMNS),
      to: Math.round((region.left + region.width) * CELL_COLUMNS),
    };
    this.#rows = { from: Math.round(region.top * CELL_ROWS), to: Math.round((region.top + region.height) * CELL_ROWS) };
  }

  clear(): void {
    this.#seen = [];
  }

  /**
   * @param camera how far the camera itself moved since the cells before, pixels of the frame
   * @returns the wave that has just passed, or null
   */
  see(cells: Float32Array, camera: Camera, from: number, to: number, notBefore: number): Gesture | null {
    const last = this.#seen.at(-1);
    const changed = new Float32Array(CELL_COLUMNS);
    let active = 0;
    if (last) {
      const isMoved = Math.abs(camera.right) + Math.abs(camera.down) > 0;
      const differs = changedCells(isMoved ? movedCells(last.cells, camera.right, camera.down) : last.cells, cells);
      const height = this.#rows.to - this.#rows.from;
      for (let x = this.#columns.from; x < this.#columns.to; x++) {
        let count = 0;
        for (let y = this.#rows.from; y < this.#rows.to; y++) count += differs[y * CELL_COLUMNS + x] ?? 0;
        changed[x] = count / height;
        if (count >= TALL_PART * height) active += 1;
      }
    }
    this.#seen.push({ from, to, cells, changed, activePart: active / (this.#columns.to - this.#columns.from) });
    const first = this.#seen.findIndex((seen) => seen.to > to - KEPT_MS);
    this.#seen.splice(0, Math.max(first, this.#seen.length - MOST_STEPS));
    return this.#wave(notBefore);
  }

  /** The last time of change, between two times of quiet. */
  #burst(): { readonly before: Seen; readonly steps: readonly Seen[] } | null {
    const isQuiet = ({ activePart }: Seen): boolean => activePart <= QUIET_PART;
    const end = this.#seen.findLastIndex((seen) => !isQuiet(seen));
    const [last, now] = [this.#seen[end], this.#seen.at(-1)];
    if (!last || !now || now.to - last.to < QUIET_AFTER_MS || now.to - last.to > LATE_MS) return null;
    let begin = end;
    for (let i = end; i >= 0; i--) {
      const seen = this.#seen[i];
      const next = this.#seen[begin];
      if (!seen || !next) break;
      if (!isQuiet(seen)) begin = i;
      else if (next.from - seen.from >= QUIET_BEFORE_MS) {
        // Its edges are thin while it comes in and goes out: those steps are part of it.
        const before = this.#seen[Math.max(0, i - 1)];
        return before ? { before, steps: this.#seen.slice(i, end + 3) } : null;
      }
    }
    return null;
  }

  #wave(notBefore: number): Gesture | null {
    const burst = this.#burst();
    const now = this.#seen.at(-1);
    const [first, last] = [burst?.steps[0], burst?.steps.at(-1)];
    if (!burst || !now || !first || !last) return null;
    if (first.from < notBefore || last.to - first.from > LONGEST_MS) return null;
    const differs = changedCells(burst.before.cells, now.cells);
    const restored = 1 - differs.reduce((sum, value) => sum + value, 0) / CELLS;
    if (restored < RESTORED_PART) return null;
    const changes = this.#changes(burst.steps);
    const columns = this.#columns.to - this.#columns.from;
    const line = linePassage(changes, columns);
    const busy = busyPassage(changes, columns, (last.to - first.from) / burst.steps.length);
    const found = [
      line && { passage: line, order: margin(line.order, 0.6, 0.85) },
      busy && { passage: busy, order: margin(busy.order, 0.3, 0.5) },
    ];
    const waves = found.flatMap((way) =>
      way ? [this.#gestureOf(way.passage, way.order, restored, first.from, last.to)] : [],
    );
    return waves.reduce((best, wave) => (wave && (!best || wave.confidence > best.confidence) ? wave : best), null);
  }

  #gestureOf(passage: Passage, order: number, restored: number, from: number, to: number): Gesture | null {
    const crossing = Math.abs(passage.crossing);
    const margins = [
      order,
      margin(passage.covered, 0.4, 0.6),
      margin(passage.span, 0.65, 0.85),
      margin(passage.height, 0.25, 0.4),
      margin(crossing, CROSSING_MS.least, 1.5 * CROSSING_MS.least),
      margin(crossing, CROSSING_MS.most, 0.8 * CROSSING_MS.most),
      margin(restored, RESTORED_PART, 0.85),
    ];
    const confidence = margins.reduce((product, value) => product * (0.5 + 0.5 * value), 1);
    if (Math.min(...margins) <= 0 || confidence < LEAST_CONFIDENCE) return null;
    const goesRight = passage.crossing > 0 === this.#mirrored;
    const percent = (part: number): string => `${Math.round(100 * part)} %`;
    return {
      kind: goesRight ? 'wave right' : 'wave left',
      confidence,
      from,
      to,
      why:
        `something ${percent(passage.height)} of the view high passed ${percent(passage.covered)} of its columns in their ` +
        `order, at ${(crossing / 1000).toFixed(2)} s for the width, and ${percent(restored)} of the picture is as before`,
    };
  }

  #changes(steps: readonly Seen[]): readonly Change[] {
    return steps.flatMap(({ changed, from, to }) =>
      [...changed].flatMap((part, column) => (part >= TALL_PART ? [{ column, time: (from + to) / 2, part }] : [])),
    );
  }
}
