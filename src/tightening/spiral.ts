/**
 * From the middle outwards, sides by turns: the order for covers and long flanges. The fasteners are taken in shells of
 * equal distance from the middle of the plan. Within a shell the nearest to 12 o'clock comes first, then the one
 * opposite it, then on clockwise.
 */
import type { Position } from './pattern.ts';

/** Distances and places that agree to this are the same; the plan spans −1 to 1. */
const SAME = 1e-6;

/** The order, shell by shell. */
export function spiral(positions: readonly Position[]): number[][] {
  const polar = positions.map(around).sort((a, b) => a.distance - b.distance || a.turn - b.turn);
  return shells(polar).map(oppositesByTurns);
}

interface Polar {
  readonly number: number;
  readonly x: number;
  readonly y: number;
  readonly distance: number;
  /** Radians clockwise from 12 o'clock. */
  readonly turn: number;
}

function around({ number, x, y }: Position): Polar {
  const turn = Math.atan2(x, -y);
  const fromTwelve = turn < -SAME ? turn + 2 * Math.PI : Math.max(turn, 0);
  return { number, x, y, distance: Math.round(Math.hypot(x, y) / SAME), turn: fromTwelve };
}

function shells(sorted: readonly Polar[]): Polar[][] {
  const found: Polar[][] = [];
  for (const fastener of sorted) {
    const last = found.at(-1);
    if (last?.[0]?.distance === fastener.distance) last.push(fastener);
    else found.push([fastener]);
  }
  return found;
}

function oppositesByTurns(shell: readonly Polar[]): number[] {
  const spot = (x: number, y: number) => `${Math.round(x / SAME)},${Math.round(y / SAME)}`;
  const waiting = new Map(shell.map(({ number, x, y }) => [spot(x, y), number]));
  const order: number[] = [];
  for (const { x, y } of shell) {
    for (const place of [spot(x, y), spot(-x || 0, -y || 0)]) {
      const number = waiting.get(place);
      if (number !== undefined) order.push(number);
      waiting.delete(place);
    }
  }
  return order;
}
