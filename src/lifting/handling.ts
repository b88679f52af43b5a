/** What follows from a lifting assessment: by how many a load may be carried, or that something else must carry it. */
import { compare, type Mass } from '../units/index.ts';
import { teamCapacity } from './mass.ts';

/** How a weight is carried, by more and more help. */
export const HANDLINGS = ['one person', 'two persons', 'three persons', 'sling or hoist', 'stand or support'] as const;
export type Handling = (typeof HANDLINGS)[number];

const TEAMS = ['one person', 'two persons', 'three persons'] as const satisfies readonly Handling[];

/** How many carry by hand; null where something else carries. */
export function carriers(handling: Handling): 1 | 2 | 3 | null {
  switch (handling) {
    case 'one person':
      return 1;
    case 'two persons':
      return 2;
    case 'three persons':
      return 3;
    case 'sling or hoist':
    case 'stand or support':
      return null;
  }
}

/**
 * The least that carries a load, from what one person may lift. The share of a team is common practice, no standard
 * (`teamCapacity`).
 * @throws Refused `bad-mass` for a limit below zero
 */
export function leastHandling(load: Mass, limitForOne: Mass): Handling {
  const enough = TEAMS.find((_, i) => compare(load, capacityOf(i + 1, limitForOne)) <= 0);
  return enough ?? 'sling or hoist';
}

/** What so many, one to three, may carry together by that practice. @throws Refused as `teamCapacity` does */
export const capacityOf = (persons: number, limitForOne: Mass): Mass =>
  teamCapacity(Array.from({ length: persons }, () => limitForOne));
