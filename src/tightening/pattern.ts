/** Fastener patterns: where each numbered fastener sits in a plan of the joint, seen from the wrench side. */
import { patterns } from '../words/patterns.ts';
import { refuse } from './refusal.ts';

/** A fastener by the number marked on the part, in a plan from −1 to 1 both ways: x to the right, y down. */
export interface Position {
  readonly number: number;
  readonly x: number;
  readonly y: number;
}

export type Direction = 'clockwise' | 'counter-clockwise';
interface Round {
  /** Where the first position sits, in degrees clockwise from 12 o'clock. Default 0. */
  readonly startAngle?: number;
  /** Which way the positions are counted, seen from the wrench side. Default clockwise. */
  readonly direction?: Direction;
}

/** The numbers marked on the part, one for each position in counting order; 1, 2, 3, … where the part shows none. */
interface Marked {
  readonly numbers?: readonly number[];
}

/**
 * A layout and the order in which its positions are counted:
 * - ring: from 12 o'clock, or the start angle, round once;
 * - double ring: the outer ring, then the inner one;
 * - rectangle, edge: from the top left corner round the edge; grid: row by row, left to right;
 * - free: as listed. Free places may have any scale; they are fitted into the plan.
 */
export type Layout = Marked &
  (
    | (Round & { readonly shape: 'ring'; readonly count: number })
    | (Round & { readonly shape: 'double ring'; readonly outer: number; readonly inner: number })
    | {
        readonly shape: 'rectangle';
        readonly columns: number;
        readonly rows: number;
        readonly fill: 'edge' | 'grid';
        readonly direction?: Direction;
      }
    | { readonly shape: 'free'; readonly places: readonly Place[] }
  );

export interface Place {
  readonly x: number;
  readonly y: number;
}

export interface Pattern {
  readonly shape: Layout['shape'];
  /** In counting order. */
  readonly positions: readonly Position[];
  /** The closed rounds of the pattern as fastener numbers, innermost first; none for grids and free places. */
  readonly rounds: readonly (readonly number[])[];
  /** Only some fasteners of a round are left, and not at equal distances: nothing lies crosswise in it. */
  readonly isUneven?: true;
}

/** More than any joint; a larger count is a slip of the pen. */
const MOST_FASTENERS = 1000;
/** Radius of the inner ring of a double ring in the plan. A drawing, not a dimension. */
const INNER_RADIUS = 0.6;

/**
 * The positions of a layout.
 * @throws Refused `bad-count`, `bad-place`, `bad-number`, `duplicate-fastener`, `missing-fastener`, `unknown-fastener`.
 */
export function layOut(layout: Layout): Pattern {
  const { places, roundSizes } = placesOf(layout);
  const numbers = numbersFor(places.length, layout.numbers);
  const positions = places.map(({ x, y }, i) => ({ number: numbers[i] ?? i + 1, x, y }));
  return { shape: layout.shape, positions, rounds: cut(numbers, roundSizes).reverse() };
}

/** The fastener numbers of a pattern in counting order. */
export const numbersOf = (pattern: Pattern): readonly number[] => pattern.positions.map(({ number }) => number);

function placesOf(layout: Layout): { places: readonly Place[]; roundSizes: readonly number[] } {
  switch (layout.shape) {
    case 'ring':
      return { places: ring(counted(layout.count, 'ring'), 1, layout), roundSizes: [layout.count] };
    case 'double ring': {
      const outer = ring(counted(layout.outer, 'outer ring'), 1, layout);
      const inner = ring(counted(layout.inner, 'inner ring'), INNER_RADIUS, layout);
      return { places: [...outer, ...inner], roundSizes: [outer.length, inner.length] };
    }
    case 'rectangle': {
      const places = layout.fill === 'grid' ? grid(layout.columns, layout.rows) : edge(layout);
      return { places, roundSizes: layout.fill === 'grid' ? [] : [places.length] };
    }
    case 'free':
      return { places: fitted(layout.places), roundSizes: [] };
  }
}

function ring(count: number, radius: number, { startAngle = 0, direction = 'clockwise' }: Round): Place[] {
  if (!Number.isFinite(startAngle)) refuse('bad-place', patterns.badStartAngle(startAngle));
  const step = (direction === 'clockwise' ? 360 : -360) / count;
  return Array.from({ length: count }, (_, i) => {
    const turn = ((startAngle + i * step) * Math.PI) / 180;
    return { x: radius * Math.sin(turn), y: -radius * Math.cos(turn) };
  });
}

function grid(columns: number, rows: number): Place[] {
  const at = unitBox(counted(columns, 'columns'), counted(rows, 'rows'));
  counted(columns * rows, 'grid');
  return Array.from({ length: columns * rows }, (_, i) => at(i % columns, Math.floor(i / columns)));
}

function edge({ columns, rows, direction = 'clockwise' }: Extract<Layout, { shape: 'rectangle' }>): Place[] {
  counted(columns, 'columns');
  counted(rows, 'rows');
  if (columns < 2 || rows < 2) refuse('bad-count', patterns.edgeTooSmall);
  const [right, bottom] = [columns - 1, rows - 1];
  const clockwise = [
    ...Array.from({ length: right }, (_, i) => [i, 0] as const),
    ...Array.from({ length: bottom }, (_, i) => [right, i] as const),
    ...Array.from({ length: right }, (_, i) => [right - i, bottom] as const),
    ...Array.from({ length: bottom }, (_, i) => [0, bottom - i] as const),
  ];
  const at = unitBox(columns, rows);
  const [corner, ...others] = clockwise.map(([column, row]) => at(column, row));
  if (corner === undefined || direction === 'clockwise') return corner === undefined ? [] : [corner, ...others];
  return [corner, ...others.reverse()];
}

/** Equal pitch both ways; the longer side fills the plan. */
function unitBox(columns: number, rows: number): (column: number, row: number) => Place {
  const half = Math.max(columns - 1, rows - 1, 1) / 2;
  return (column, row) => ({ x: (column - (columns - 1) / 2) / half, y: (row - (rows - 1) / 2) / half });
}

function fitted(places: readonly Place[]): Place[] {
  counted(places.length, 'places');
  const xs = places.map(({ x }) => x);
  const ys = places.map(({ y }) => y);
  if (![...xs, ...ys].every(Number.isFinite)) refuse('bad-place', patterns.badPlace);
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const half = Math.max(right - left, bottom - top) / 2 || 1;
  const fit = ({ x, y }: Place) => ({ x: (x - (left + right) / 2) / half, y: (y - (top + bottom) / 2) / half });
  const seen = new Map<string, number>();
  for (const [i, { x, y }] of places.entries()) {
    const twin = seen.get(`${x},${y}`);
    if (twin !== undefined) refuse('bad-place', patterns.sameSpot(twin + 1, i + 1));
    seen.set(`${x},${y}`, i);
  }
  return places.map(fit);
}

function numbersFor(count: number, marked: readonly number[] | undefined): readonly number[] {
  if (marked === undefined) return Array.from({ length: count }, (_, i) => i + 1);
  const seen = new Set<number>();
  for (const number of marked) {
    if (seen.has(number)) refuse('duplicate-fastener', patterns.markedTwice(number));
    seen.add(number);
    if (!Number.isSafeInteger(number) || number < 1) {
      refuse('bad-number', patterns.badNumber(number));
    }
  }
  if (marked.length < count) {
    refuse('missing-fastener', patterns.tooFewNumbers(count, marked.length));
  }
  if (marked.length > count) {
    refuse('unknown-fastener', patterns.tooManyNumbers(count, marked.length));
  }
  return marked;
}

function counted(count: number, what: Parameters<typeof patterns.badCount>[0]): number {
  if (!Number.isInteger(count) || count < 1 || count > MOST_FASTENERS) {
    refuse('bad-count', patterns.badCount(what, MOST_FASTENERS, count));
  }
  return count;
}

function cut(numbers: readonly number[], sizes: readonly number[]): number[][] {
  let from = 0;
  return sizes.map((size) => numbers.slice(from, (from += size)));
}
