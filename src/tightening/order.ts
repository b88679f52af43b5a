/** Tightening order: from a description to the list of fastener numbers, and back to labels. */
import { patterns } from '../words/patterns.ts';
import { crosswisePlaces } from './crosswise.ts';
import { numbersOf, type Pattern } from './pattern.ts';
import { refuse } from './refusal.ts';
import { spiral } from './spiral.ts';

/**
 * How the order is described. The manual's own list is `explicit` and always wins.
 * - crosswise: opposite follows opposite; a star for odd counts (see crosswise.ts). A double ring is worked inner ring
 *   first. Needs closed rounds, so not for grids or free places.
 * - circular: in counting order.
 * - spiral: from the middle outwards, sides by turns (see spiral.ts); for covers.
 * - grouped: `size` neighbours are treated as one fastener and the groups are worked crosswise (48 → 12 groups of four).
 * - in turn: some fasteners first, others after them, each part in an order of its own.
 * - reverse: of another order, for loosening.
 */
export type Order =
  | { readonly kind: 'explicit'; readonly numbers: readonly number[] }
  | { readonly kind: 'crosswise' }
  | { readonly kind: 'circular' }
  | { readonly kind: 'spiral' }
  | { readonly kind: 'grouped'; readonly size: number }
  | { readonly kind: 'in turn'; readonly parts: readonly OrderPart[] }
  | { readonly kind: 'reverse'; readonly of: Order };

export interface OrderPart {
  readonly numbers: readonly number[];
  readonly order: Order;
}

/**
 * The fastener numbers in the order they are worked.
 * @throws Refused `duplicate-fastener`, `missing-fastener`, `unknown-fastener` when an order is not every fastener once;
 * `order-does-not-fit` when the order has no meaning for the pattern; `bad-count` for a group size.
 */
export const orderOf = (pattern: Pattern, order: Order): number[] => orderGroups(pattern, order).flat();

/** The same order in the groups it falls into: crosses of four, pairs, rings, parts. */
export function orderGroups(pattern: Pattern, order: Order): number[][] {
  switch (order.kind) {
    case 'explicit':
      return [everyFastenerOnce(order.numbers, numbersOf(pattern))];
    case 'circular':
      return [[...numbersOf(pattern)]];
    case 'spiral':
      return spiral(pattern.positions);
    case 'crosswise':
      return roundsOf(pattern, 'crosswise').flatMap((round) => pick(round, crosswisePlaces(round.length)));
    case 'grouped':
      return roundsOf(pattern, 'grouped').flatMap((round) => grouped(round, order.size));
    case 'in turn':
      everyFastenerOnce(
        order.parts.flatMap(({ numbers }) => numbers),
        numbersOf(pattern),
      );
      return order.parts.flatMap(({ numbers, order: own }) => orderGroups(only(pattern, numbers), own));
    case 'reverse':
      return orderGroups(pattern, order.of)
        .reverse()
        .map((group) => group.reverse());
  }
}

/**
 * The inverse: for each position of the pattern in counting order, its place (from 1) in the order. These are the labels
 * of drawings that number fasteners by sequence and not by position.
 */
export function orderLabels(pattern: Pattern, order: readonly number[]): number[] {
  const numbers = numbersOf(pattern);
  const labels = new Map(everyFastenerOnce(order, numbers).map((number, i) => [number, i + 1]));
  return numbers.flatMap((number) => labels.get(number) ?? []);
}

/** The pattern without the other fasteners; the counting order and the rounds stay. */
export function only(pattern: Pattern, numbers: readonly number[]): Pattern {
  const kept = new Set(numbers);
  const known = new Set(numbersOf(pattern));
  for (const number of kept) {
    if (!known.has(number)) refuse('unknown-fastener', patterns.noFastener(number));
  }
  const isUneven = pattern.isUneven ?? pattern.rounds.some((round) => !isEvenlyKept(round, kept));
  return {
    shape: pattern.shape,
    ...(isUneven ? { isUneven } : {}),
    positions: pattern.positions.filter(({ number }) => kept.has(number)),
    rounds: pattern.rounds
      .map((round) => round.filter((number) => kept.has(number)))
      .filter((round) => round.length > 0),
  };
}

/** Whether the fasteners kept are at equal distances round the ring. Of two or fewer any order is crosswise. */
function isEvenlyKept(round: readonly number[], kept: ReadonlySet<number>): boolean {
  const places = round.flatMap((number, place) => (kept.has(number) ? [place] : []));
  if (places.length <= 2) return true;
  const gaps = places.map((place, i) => (places[i + 1] ?? (places[0] ?? 0) + round.length) - place);
  return new Set(gaps).size === 1;
}

/** The same order with the fasteners of the manual's lists that are not asked for left out. */
export function narrowed(order: Order, numbers: readonly number[]): Order {
  const kept = new Set(numbers);
  const keep = (list: readonly number[]) => list.filter((number) => kept.has(number));
  switch (order.kind) {
    case 'explicit':
      return { kind: 'explicit', numbers: keep(order.numbers) };
    case 'in turn':
      return {
        kind: 'in turn',
        parts: order.parts
          .map((part) => ({ numbers: keep(part.numbers), order: narrowed(part.order, keep(part.numbers)) }))
          .filter((part) => part.numbers.length > 0),
      };
    case 'reverse':
      return { kind: 'reverse', of: narrowed(order.of, numbers) };
    case 'crosswise':
    case 'circular':
    case 'spiral':
    case 'grouped':
      return order;
  }
}

function everyFastenerOnce(order: readonly number[], numbers: readonly number[]): number[] {
  const missing = new Set(numbers);
  const known = new Set(numbers);
  for (const number of order) {
    if (!known.has(number)) refuse('unknown-fastener', patterns.orderNamesUnknown(number));
    if (!missing.delete(number)) refuse('duplicate-fastener', patterns.orderNamesTwice(number));
  }
  if (missing.size > 0) refuse('missing-fastener', patterns.orderLeavesOut([...missing]));
  return [...order];
}

function roundsOf(pattern: Pattern, kind: 'crosswise' | 'grouped'): Pattern['rounds'] {
  if (pattern.rounds.length === 0) refuse('order-does-not-fit', patterns.needsRounds(kind));
  if (pattern.isUneven) refuse('order-does-not-fit', patterns.needsEqualDistances(kind));
  return pattern.rounds;
}

function grouped(round: readonly number[], size: number): number[][] {
  if (!Number.isInteger(size) || size < 1 || round.length % size !== 0) {
    refuse('bad-count', patterns.notInGroups(round.length, size));
  }
  return crosswisePlaces(round.length / size)
    .flat()
    .map((group) => round.slice(group * size, (group + 1) * size));
}

const pick = (round: readonly number[], places: readonly (readonly number[])[]): number[][] =>
  places.map((group) => group.flatMap((place) => round[place] ?? []));
