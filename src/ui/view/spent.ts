/** The consumable that is asked for now and may not be taken: what is entered of a fresh one. */
import { sayRefusal } from '../../language/say-refusal.ts';
import type { EventBody } from '../../session/event.ts';
import { spentConsumable } from '../../session/settle.ts';
import type { SessionState } from '../../session/state.ts';
import type { FreshPacking } from '../../session/stock.ts';

export interface SpentView {
  readonly consumable: string;
  readonly name: string;
  /** Why it may not be taken, and what to do. */
  readonly why: string;
  readonly wantsExpiry: boolean;
  readonly wantsQuantity: boolean;
  /** The packing that was fetched last; undefined where none was. */
  readonly before: FreshPacking | undefined;
  /** What is wrong with what was entered last, in which field; null once anything else has happened. */
  readonly fault: { readonly field: 'expires' | 'quantity'; readonly why: string } | null;
}

export function spentView(state: SessionState, newest: EventBody | null): SpentView | null {
  const spent = spentConsumable(state);
  const consumable = spent && state.procedure.consumables.find(({ id }) => id === spent.consumable);
  if (!consumable) return null;
  return {
    consumable: consumable.id,
    name: consumable.name,
    why: sayRefusal(state, spent),
    wantsExpiry: consumable.expires,
    wantsQuantity: consumable.quantity !== undefined,
    before: state.fetched.get(consumable.id),
    fault: faultOf(state, newest),
  };
}

function faultOf(state: SessionState, newest: EventBody | null): SpentView['fault'] {
  if (newest?.kind !== 'refused' || newest.meaning.kind !== 'fresh consumable') return null;
  const field = newest.reason.code === 'no quantity' ? 'quantity' : 'expires';
  return { field, why: sayRefusal(state, newest.reason) };
}
