/**
 * A wave: something large passes across the view, from one side to the other, and is gone. What counts is when each
 * column of the picture changed: one after another, all of them, within a second, and the picture is then as before.
 * Who walks by is slower; what swings there and back leaves no order; who leans in stays. Pure.
 */
import { changedCells, CELLS } from './change.ts';
import { WIDTH, type Region } from './frame.ts';
import { margin, type Gesture } from './gesture.ts';
import { CELL_COLUMNS, CELL_ROWS } from './picture.ts';

const KEPT_MS = 2600;
const MOST_STEPS = 56;
/** A column has changed where so much of its height has. */
const TALL_PART = 0.2;
/** The view is quiet while no more of its columns change. */
const QUIET_PART = 0.25;
const QUIET_AFTER_MS = 110;
const QUIET_BEFORE_MS = 130;
const LONGEST_MS = 1500;
/** Time for the whole width. Who walks by close behind takes longer. */
const CROSSING_MS = { least: 90, most: 1000 };

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

  /** @returns the wave that has just passed, or null */
  see(cells: Float32Array, from: number, to: number, notBefore: number): Gesture | null {
    const last = this.#seen.at(-1);
    const changed = new Float32Array(CELL_COLUMNS);
    let active = 0;
    if (last) {
      const differs = changedCells(last.cells, cells);
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
    if (!last || !now || now.to - last.to < QUIET_AFTER_MS) return null;
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
    const passage = this.#passage(burst.steps);
    if (!passage) return null;
    const differs = changedCells(burst.before.cells, now.cells);
    const restored = 1 - differs.reduce((sum, value) => sum + value, 0) / CELLS;
    const crossing = Math.abs(passage.crossing);
    const margins = [
      margin(passage.covered, 0.4, 0.6),
      margin(passage.span, 0.65, 0.85),
      margin(passage.order, 0.6, 0.85),
      margin(passage.height, 0.25, 0.4),
      margin(crossing, CROSSING_MS.least, 1.5 * CROSSING_MS.least),
      margin(crossing, CROSSING_MS.most, 0.8 * CROSSING_MS.most),
      margin(restored, 0.65, 0.85),
    ];
    if (Math.min(...margins) <= 0) return null;
    const goesRight = passage.crossing > 0 === this.#mirrored;
    const percent = (part: number): string => `${Math.round(100 * part)} %`;
    return {
      kind: goesRight ? 'wave right' : 'wave left',
      confidence: margins.reduce((product, value) => product * (0.5 + 0.5 * value), 1),
      from: first.from,
      to: last.to,
      why:
        `something ${percent(passage.height)} of the view high passed ${percent(passage.covered)} of its columns in their ` +
        `order, at ${(crossing / 1000).toFixed(2)} s for the width, and ${percent(restored)} of the picture is as before`,
    };
  }

  /** When each column changed, as a line through time: its slope is the time for the whole width of the picture. */
  #passage(steps: readonly Seen[]): {
    readonly crossing: number;
    readonly order: number;
    readonly covered: number;
    /** From the first column that changed to the last, as a part of all; and the part of all that changed. */
    readonly span: number;
    readonly height: number;
  } | null {
    const points: { x: number; time: number }[] = [];
    const heights: number[] = [];
    for (let x = this.#columns.from; x < this.#columns.to; x++) {
      let [weight, moment, most] = [0, 0, 0];
      for (const { changed, from, to } of steps) {
        const part = changed[x] ?? 0;
        most = Math.max(most, part);
        if (part < TALL_PART) continue;
        weight += part;
        moment += (part * (from + to)) / 2;
      }
      if (weight === 0) continue;
      points.push({ x, time: moment / weight });
      heights.push(most);
    }
    if (points.length < 5) return null;
    const mean = (value: (point: { x: number; time: number }) => number): number =>
      points.reduce((sum, point) => sum + value(point), 0) / points.length;
    const [x, time] = [mean((point) => point.x), mean((point) => point.time)];
    const xx = mean((point) => (point.x - x) ** 2);
    const tt = mean((point) => (point.time - time) ** 2);
    const xt = mean((point) => (point.x - x) * (point.time - time));
    if (xx === 0 || tt === 0) return null;
    heights.sort((a, b) => a - b);
    return {
      crossing: (xt / xx) * (WIDTH / 4),
      order: xt ** 2 / (xx * tt),
      covered: points.length / (this.#columns.to - this.#columns.from),
      span: ((points.at(-1)?.x ?? 0) - (points[0]?.x ?? 0) + 1) / (this.#columns.to - this.#columns.from),
      height: heights[heights.length >> 1] ?? 0,
    };
  }
}
