/** Swings of a motion to and fro: from one turning point to the next. Pure. */

export interface Swing {
  readonly from: number;
  readonly to: number;
  /** Pixels; positive to the right or down. */
  readonly by: number;
}

export interface Moved {
  readonly from: number;
  readonly to: number;
  readonly by: number;
}

/**
 * The swings of a position that moves by steps; a turn counts when it goes back by more than `least`. The last is the
 * one under way. A swing begins and ends where motion does: stillness before and after a turn is no part of it.
 */
export function swingsOf(moves: readonly Moved[], least: number): readonly Swing[] {
  const swings: Swing[] = [];
  let position = 0;
  /** The last turning point, and the farthest since then. */
  let turn = 0;
  let farthest = 0;
  let direction = 0;
  let turnAt = moves[0]?.from ?? 0;
  let farthestAt = turnAt;
  const close = (): void => {
    if (direction !== 0) swings.push(trimmed({ from: turnAt, to: farthestAt, by: farthest - turn }, moves));
  };
  for (const { to, by } of moves) {
    position += by;
    if (direction === 0) {
      // Until it has gone far enough either way, the beginning is wherever it last was.
      if (Math.abs(position - turn) <= least) continue;
      direction = Math.sign(position - turn);
      [farthest, farthestAt] = [position, to];
    } else if ((position - farthest) * direction > 0) {
      [farthest, farthestAt] = [position, to];
    } else if ((farthest - position) * direction > least) {
      close();
      [turn, turnAt] = [farthest, farthestAt];
      [farthest, farthestAt] = [position, to];
      direction = -direction;
    }
  }
  close();
  return swings;
}

/** Part of a swing's greatest pace below which it has not begun, or is over. */
const SLOW_PART = 0.2;

/** The swing from its fastest moment out to where it is slow on both sides: drift long before a turn is no part of it. */
function trimmed(swing: Swing, moves: readonly Moved[]): Swing {
  const inside = moves.filter(({ from, to }) => from >= swing.from && to <= swing.to);
  const direction = Math.sign(swing.by);
  const paces = inside.map(({ from, to, by }) => (direction * by) / (to - from));
  const greatest = Math.max(...paces);
  const isSlow = (at: number): boolean => (paces[at] ?? 0) < SLOW_PART * greatest;
  let first = paces.indexOf(greatest);
  let last = first;
  // One slow step may be noise; where two follow each other, or nothing does, it has ended.
  while (first > 0 && !(isSlow(first - 1) && (first === 1 || isSlow(first - 2)))) first--;
  const end = inside.length - 1;
  while (last < end && !(isSlow(last + 1) && (last === end - 1 || isSlow(last + 2)))) last++;
  const core = inside.slice(first, last + 1);
  return {
    from: core[0]?.from ?? swing.from,
    to: core.at(-1)?.to ?? swing.to,
    by: core.reduce((sum, { by }) => sum + by, 0),
  };
}

/**
 * The last swings that follow one upon the other without a pause, oldest first. One that takes too long, or goes far less
 * than those after it, is drift: there the run begins.
 */
export function lastRun(
  swings: readonly Swing[],
  {
    longestPause,
    longest,
    leastPart,
  }: { readonly longestPause: number; readonly longest: number; readonly leastPart: number },
): readonly Swing[] {
  let first = swings.length;
  let most = 0;
  for (let i = swings.length - 1; i >= 0; i--) {
    const [here, next] = [swings[i], swings[i + 1]];
    if (!here || here.to - here.from > longest || Math.abs(here.by) < leastPart * most) break;
    if (next && next.from - here.to > longestPause) break;
    most = Math.max(most, Math.abs(here.by));
    first = i;
  }
  return swings.slice(first);
}
