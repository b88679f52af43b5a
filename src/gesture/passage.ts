/** Whether the columns of the picture changed one after another, as where something passes across it. Pure. */
import { CELL_COLUMNS } from './picture.ts';

/** A column with a good part of its height changed, between two times. */
export interface Change {
  readonly column: number;
  readonly time: number;
  /** Of the watched height. */
  readonly part: number;
}

export interface Passage {
  /** Milliseconds for the whole width of the picture, to the right; negative to the left. */
  readonly crossing: number;
  /** 0 to 1: how nearly the columns changed in their order. */
  readonly order: number;
  /** The columns that changed so, and from the first to the last of them; parts of all that are watched. */
  readonly covered: number;
  readonly span: number;
  /** Of the watched height, what changed in a column: the median. */
  readonly height: number;
}

/** The line through the mean time of change of each column, where nothing else moved. */
export function linePassage(changes: readonly Change[], columns: number): Passage | null {
  const sums = new Map<number, { weight: number; moment: number; most: number }>();
  for (const { column, time, part } of changes) {
    const sum = sums.get(column) ?? { weight: 0, moment: 0, most: 0 };
    sum.weight += part;
    sum.moment += part * time;
    sum.most = Math.max(sum.most, part);
    sums.set(column, sum);
  }
  const points = [...sums].map(([x, { weight, moment, most }]) => ({ x, time: moment / weight, most }));
  if (points.length < 5) return null;
  const mean = (value: (point: { x: number; time: number }) => number): number =>
    points.reduce((sum, point) => sum + value(point), 0) / points.length;
  const [x, time] = [mean((point) => point.x), mean((point) => point.time)];
  const xx = mean((point) => (point.x - x) ** 2);
  const tt = mean((point) => (point.time - time) ** 2);
  const xt = mean((point) => (point.x - x) * (point.time - time));
  if (xx === 0 || tt === 0) return null;
  const order = xt ** 2 / (xx * tt);
  return { crossing: (xt / xx) * CELL_COLUMNS, order, ...extent(points, columns) };
}

function extent(points: readonly { readonly x: number; readonly most: number }[], columns: number) {
  const heights = points.map(({ most }) => most).sort((a, b) => a - b);
  const places = points.map(({ x }) => x);
  return {
    covered: points.length / columns,
    span: (Math.max(...places) - Math.min(...places) + 1) / columns,
    height: heights[heights.length >> 1] ?? 0,
  };
}

/** Times for the width that are tried, milliseconds, and what is no passage at all. */
const CROSSINGS = [150, 200, 260, 330, 410, 500, 600, 720, 860, 1000];
const AT_ONCE = [-50, 0, 50];

/**
 * The order that most columns follow, while others change for other reasons: someone walks by behind. The order is by
 * how much fewer follow the best one the other way, or all at once.
 * @param step milliseconds between two pictures
 */
export function busyPassage(changes: readonly Change[], columns: number, step: number): Passage | null {
  const best = {
    right: followers(changes, 0, step),
    left: followers(changes, 0, step),
    crossing: { right: 0, left: 0 },
  };
  for (const crossing of CROSSINGS) {
    const [right, left] = [followers(changes, crossing, step), followers(changes, -crossing, step)];
    if (right.sum > best.right.sum) [best.right, best.crossing.right] = [right, crossing];
    if (left.sum > best.left.sum) [best.left, best.crossing.left] = [left, -crossing];
  }
  const goesRight = best.right.sum > best.left.sum;
  const [found, other] = goesRight ? [best.right, best.left] : [best.left, best.right];
  const crossing = goesRight ? best.crossing.right : best.crossing.left;
  if (crossing === 0 || found.columns.size < 5) return null;
  const rival = Math.max(other.sum, ...AT_ONCE.map((at) => followers(changes, at, step).sum));
  const points = [...found.columns].map(([x, most]) => ({ x, most }));
  return { crossing, order: 1 - rival / found.sum, ...extent(points, columns) };
}

interface Followers {
  readonly sum: number;
  readonly columns: ReadonlyMap<number, number>;
}

/** The columns that change along one line through time, where it is laid so that it catches most. */
function followers(changes: readonly Change[], crossing: number, step: number): Followers {
  const width = 0.6 * step + 12;
  /** When the line would pass the middle of the picture. */
  const middles = changes.map(
    ({ column, time }) => time - (crossing * (column + 0.5 - CELL_COLUMNS / 2)) / CELL_COLUMNS,
  );
  let best: Followers = { sum: 0, columns: new Map() };
  const [from, to] = [Math.min(...middles), Math.max(...middles)];
  for (let middle = from; middle <= to; middle += width) {
    const columns = new Map<number, number>();
    let sum = 0;
    changes.forEach(({ column, part }, i) => {
      if (Math.abs((middles[i] ?? 0) - middle) > width) return;
      const before = columns.get(column) ?? 0;
      if (part <= before) return;
      columns.set(column, part);
      sum += part - before;
    });
    if (sum > best.sum) best = { sum, columns };
  }
  return best;
}
